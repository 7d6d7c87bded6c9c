package gapwise.load;

import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Citation;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.DefectLength;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.EventCount;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.Unit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Studies invented for measuring: the same every time. Two of three hold one arm, the others two,
 * as many arms in all as asked for.
 */
final class InventedStudies {
  private static final long SEED = 20_240_501;
  private static final List<String> PLACES =
      List.of("Alder Bay", "Port Winnow", "Marl Hill", "Tarn", "Quarry Ness", "Loam", "Sedge");
  private static final List<String> WORDS =
      List.of(
          "outcome",
          "results",
          "salvage",
          "fracture",
          "nonunion",
          "osteomyelitis",
          "blast",
          "open",
          "segmental",
          "docking",
          "regenerate",
          "frame",
          "graft",
          "flap",
          "cement",
          "plate",
          "nail",
          "antibiotic",
          "children",
          "elderly",
          "military",
          "rural",
          "early",
          "late",
          "staged",
          "corticotomy",
          "alignment",
          "stiffness",
          "gait",
          "quality",
          "smoking",
          "diabetes");
  private static final List<Method> METHODS = Method.vocabulary().all();
  private static final List<String> SEGMENTS = List.of("31", "32", "33", "41", "42", "43", "44");

  private final SplittableRandom random = new SplittableRandom(SEED);

  private InventedStudies() {}

  static Iterator<Study> ofArms(int arms) {
    InventedStudies invented = new InventedStudies();
    return new Iterator<>() {
      private int study;
      private int left = arms;

      @Override
      public boolean hasNext() {
        return left > 0;
      }

      @Override
      public Study next() {
        int held = Math.min(left, study % 3 == 0 ? 2 : 1);
        left -= held;
        return invented.study(study++, held);
      }
    };
  }

  private Study study(int number, int arms) {
    String place = PLACES.get(random.nextInt(PLACES.size()));
    int year = 1985 + random.nextInt(40);
    List<Arm> held = IntStream.range(0, arms).mapToObj(i -> arm(i == 0 ? "A" : "B")).toList();
    List<OutcomeReport> reports = new ArrayList<>();
    held.forEach(arm -> report(arm, reports));
    return Study.with(
            String.format("invented-%06d", number),
            Citation.with("Invented series " + number + ": " + words() + " at " + place)
                .firstAuthor(place)
                .year(year)
                .build())
        .design(Design.values()[random.nextInt(Design.values().length)])
        .invented(true)
        .arms(held)
        .outcomes(reports)
        .build();
  }

  private String words() {
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < 6; i++) {
      words.append(i == 0 ? "" : " ").append(WORDS.get(random.nextInt(WORDS.size())));
    }
    return words.toString();
  }

  private Arm arm(String id) {
    int patients = 5 + random.nextInt(60);
    double mean = Math.round(10 * (1 + 13 * random.nextDouble() * random.nextDouble())) / 10.0;
    Bone bone = random.nextInt(3) == 0 ? Bone.FEMUR : Bone.TIBIA;
    Baseline baseline =
        Baseline.with()
            .patients(patients)
            .infectedAnswer(YesOrNo.values()[random.nextInt(3)])
            .bones(List.of(new BoneCount(bone, OptionalInt.of(patients))))
            .segments(List.of(SEGMENTS.get(random.nextInt(SEGMENTS.size()))))
            .defect(
                DefectLength.of(
                    QuantitySummary.with(Unit.CENTIMETRES)
                        .mean(mean)
                        .minimum(mean / 2)
                        .maximum(mean * 2)
                        .build()))
            .followUp(QuantitySummary.with(Unit.MONTHS).mean(12 + random.nextInt(60)).build())
            .build();
    return Arm.with(id, MethodUsed.of(METHODS.get(random.nextInt(METHODS.size()))))
        .label("group " + id)
        .baseline(baseline)
        .build();
  }

  /** Union of all; months to union of two arms in three. */
  private void report(Arm arm, List<OutcomeReport> reports) {
    int patients = arm.baseline().patients().orElseThrow();
    int united = patients - random.nextInt(Math.max(1, patients / 4));
    Scope scope = new Scope.OneArm(arm.id());
    EventCount count = EventCount.of(united, patients);
    reports.add(
        OutcomeReport.with(scope, Outcome.of("union"), new ReportedValue.Events(count))
            .counted(CountedUnit.LIMBS)
            .build());
    if (random.nextInt(3) > 0) {
      QuantitySummary months =
          QuantitySummary.with(Unit.MONTHS)
              .n(united)
              .mean(5 + random.nextInt(9))
              .standardDeviation(2)
              .build();
      reports.add(
          OutcomeReport.with(scope, Outcome.of("time-to-union"), new ReportedValue.Quantity(months))
              .clock(Clock.DEFINITIVE_OPERATION)
              .build());
    }
  }
}
