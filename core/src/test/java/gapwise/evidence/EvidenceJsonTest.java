package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.DefectStage;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class EvidenceJsonTest {

  /** Invented for this test. */
  static Study example() {
    TreeMap<String, PatientOutcome> outcomes = new TreeMap<>();
    outcomes.put("union", new PatientOutcome.Happened(YesOrNo.YES));
    outcomes.put("time-to-union", new PatientOutcome.Measured(30, Unit.WEEKS));
    TreeMap<String, Missing> missing = new TreeMap<>();
    missing.put("diabetics", Missing.NOT_REPORTED);
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
            .baseline(
                Baseline.with()
                    .patients(12)
                    .infected(EventCount.of(5, 12))
                    .bones(List.of(new BoneCount(Bone.TIBIA, OptionalInt.of(12))))
                    .defect(
                        new DefectLength(
                            Optional.of(
                                QuantitySummary.with(Unit.MILLIMETRES)
                                    .mean(61)
                                    .minimum(40)
                                    .maximum(110)
                                    .unstatedSpread(new UnstatedSpread(17, OptionalDouble.empty()))
                                    .build()),
                            OptionalDouble.of(4),
                            List.of(new DefectLength.Band(LengthRange.from(8), 3)),
                            Optional.of("61 ± 17 mm (40-110)"),
                            Optional.of(DefectStage.AFTER_DEBRIDEMENT),
                            Optional.empty()))
                    .build())
            .missing(missing)
            .build();
    return Study.with("invented-01", Citation.with("Invented series").year(2015).build())
        .design(Design.RETROSPECTIVE_SERIES)
        .recruitmentFrom(PartialDate.parse("2011-08").orElseThrow())
        .invented(true)
        .arms(List.of(arm))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("union"),
                        new ReportedValue.Events(EventCount.of(11, 12)))
                    .counted(CountedUnit.LIMBS)
                    .build(),
                OutcomeReport.with(
                        new Scope.AllArms(),
                        Outcome.of("refracture"),
                        new ReportedValue.Statement("no difference", OptionalInt.empty()))
                    .build()))
        .patients(
            List.of(
                PatientRow.with("case 1", "A")
                    .defect(new Length(6, Unit.CENTIMETRES, true))
                    .outcomes(outcomes)
                    .build()))
        .build();
  }

  @Test
  void aStudyReadFromItsTextIsEqual() {
    Study study = example();
    assertEquals(study, EvidenceJson.read(EvidenceJson.write(study)));
  }

  @Test
  void whatIsEmptyIsLeftOutOfTheText() {
    String text = EvidenceJson.write(example());
    assertTrue(!text.contains("null") && !text.contains("journal"), text);
  }

  @Test
  void textThatWasStoredBeforeAFieldExistedReadsItAsEmpty() {
    String text = EvidenceJson.write(example());
    String older = text.replace(",\"wholeProvenance\":{}", "");
    assertTrue(older.length() < text.length(), text);
    assertEquals(example(), EvidenceJson.read(older));
  }

  @Test
  void textThatIsNoStudyIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> EvidenceJson.read("{\"id\":\"x\"}"));
  }
}
