package gapwise.server.testing;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Provenance;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** A small evidence base, invented for tests. */
public final class Invented {
  private static final String[] PLACES = {
    "Alder Bay", "Port Winnow", "Marl Hill", "Tarn", "Quarry Ness", "Loam", "Sedge", "Fenwick Mere"
  };

  private static final int SORTS = 16;

  private Invented() {}

  /** Two methods, sixteen series. */
  public static List<Study> studies() {
    return many(SORTS);
  }

  /** The same, and one that holds both methods and reports nothing of its patients. */
  public static List<Study> studiesWithOneThatCompares() {
    List<Study> studies = new ArrayList<>(studies());
    studies.add(
        Study.with(
                "invented-both",
                Citation.with("Invented comparison of two methods")
                    .firstAuthor("Tarn")
                    .year(2020)
                    .build())
            .design(Design.RANDOMISED)
            .invented(true)
            .arms(
                List.of(
                    Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
                        .baseline(Baseline.with().patients(20).build())
                        .build(),
                    Arm.with("B", MethodUsed.of(Method.of("induced-membrane")))
                        .baseline(Baseline.with().patients(22).build())
                        .build()))
            .build());
    return studies;
  }

  /** As many series of two methods, in the same sixteen sorts, each with patients of its own. */
  public static List<Study> many(int series) {
    return IntStream.range(0, series).mapToObj(Invented::study).toList();
  }

  private static Study study(int number) {
    int i = number % SORTS;
    boolean transport = i % 2 == 0;
    int n = 12 + 3 * i + number / SORTS % 7;
    int united = i == 6 ? n : n - 1 - i % 4;
    double mean = 4 + 0.4 * i;
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of(transport ? "bone-transport" : "induced-membrane")))
            .baseline(
                Baseline.with()
                    .patients(n)
                    .infected(EventCount.of(n / 2, n))
                    .bones(List.of(new BoneCount(Bone.TIBIA, OptionalInt.of(n))))
                    .segments(List.of("42"))
                    .defect(
                        DefectLength.of(
                            QuantitySummary.with(Unit.CENTIMETRES)
                                .mean(mean)
                                .minimum(mean - 2)
                                .maximum(mean + 3)
                                .build()))
                    .followUp(QuantitySummary.with(Unit.MONTHS).mean(24 + i).build())
                    .build())
            .build();
    return Study.with(
            String.format("invented-%02d", number),
            Citation.with("Invented series " + number + " of " + PLACES[i % 8])
                .firstAuthor(PLACES[i % 8])
                .year(2008 + i)
                .build())
        .design(Design.RETROSPECTIVE_SERIES)
        .invented(true)
        .arms(List.of(arm))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("union"),
                        new ReportedValue.Events(EventCount.of(united, n)))
                    .counted(CountedUnit.LIMBS)
                    .provenance(
                        new Provenance(
                            Optional.of("Table 2"), Optional.of("bony union in " + united)))
                    .build(),
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("time-to-union"),
                        new ReportedValue.Quantity(
                            QuantitySummary.with(Unit.MONTHS)
                                .n(united)
                                .mean(7 + 0.3 * i)
                                .standardDeviation(2)
                                .build()))
                    .clock(Clock.DEFINITIVE_OPERATION)
                    .build()))
        .build();
  }
}
