package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.appraisal.StudyRisk;
import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.Risk;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DemonstrationEvidenceTest {
  private static final List<Study> STUDIES = DemonstrationEvidence.studies();
  private static final Set<String> UNION =
      Set.of("primary-union", "union-without-further-grafting", "union", "final-union");

  private static String text(List<Study> studies) {
    return studies.stream().map(EvidenceJson::write).collect(Collectors.joining("\n"));
  }

  @Test
  void thereAreSixtySixStudies() {
    assertEquals(66, STUDIES.size());
  }

  @Test
  void everyRecordSaysThatItIsInvented() {
    for (Study study : STUDIES) {
      assertTrue(study.invented(), study.id());
      assertTrue(study.citation().title().startsWith("Invented "), study.citation().title());
      assertTrue(study.country().orElseThrow().contains("invented"), study.id());
      assertTrue(study.citation().journal().orElseThrow().contains("no such journal"), study.id());
      assertTrue(study.citation().doi().isEmpty() && study.citation().pmid().isEmpty(), study.id());
    }
  }

  @Test
  void oneSeedAlwaysGivesTheSameRecords() {
    assertEquals(text(STUDIES), text(DemonstrationEvidence.studies(DemonstrationEvidence.SEED)));
  }

  @Test
  void anotherSeedGivesOtherRecords() {
    assertNotEquals(
        text(STUDIES), text(DemonstrationEvidence.studies(DemonstrationEvidence.SEED + 1)));
  }

  @Test
  void everyRecordSurvivesTheFormInWhichItIsStored() {
    for (Study study : STUDIES) {
      assertEquals(study, EvidenceJson.read(EvidenceJson.write(study)));
    }
  }

  @Test
  void noIdAndNoTitleComesTwice() {
    assertEquals(STUDIES.size(), STUDIES.stream().map(Study::id).distinct().count());
    assertEquals(
        STUDIES.size(), STUDIES.stream().map(study -> study.citation().title()).distinct().count());
  }

  @Test
  void noTwoRecordsHoldTheSameNumbers() {
    Set<List<OutcomeReport>> seen = new HashSet<>();
    Set<Object> patients = new HashSet<>();
    for (Study study : STUDIES) {
      assertTrue(study.outcomes().isEmpty() || seen.add(study.outcomes()), study.id());
      assertTrue(study.patients().isEmpty() || patients.add(study.patients()), study.id());
    }
  }

  @Test
  void noNumberIsReportedTwiceInOneStudyUnlessOneOfThemIsMarked() {
    for (Study study : STUDIES) {
      Set<List<Object>> seen = new HashSet<>();
      for (OutcomeReport row : study.outcomes()) {
        List<Object> key =
            List.of(
                row.scope(),
                row.outcome().code(),
                row.timePoint(),
                row.clock(),
                row.phase(),
                row.subgroup(),
                row.standing());
        assertTrue(seen.add(key), study.id() + " " + key);
      }
    }
  }

  @Test
  void everyMethodOfTheVocabularyHasAnArm() {
    Set<String> used = new TreeSet<>();
    arms().forEach(arm -> used.add(arm.method().principal().code()));
    Set<String> all = new TreeSet<>();
    Method.vocabulary().all().forEach(method -> all.add(method.code()));
    assertEquals(all, used);
  }

  @Test
  void theCommonMethodsHaveTheMostArms() {
    assertTrue(armsOf("bone-transport") >= 14);
    assertTrue(armsOf("induced-membrane") >= 13);
    assertTrue(armsOf("vascularised-bone-flap") >= 8);
    assertTrue(armsOf("autograft") >= 7);
    assertTrue(armsOf("printed-scaffold") >= 6);
    assertTrue(armsOf("allograft") >= 4);
    assertTrue(armsOf("acute-shortening-lengthening") >= 4);
  }

  @Test
  void designsRunFromTheCaseReportToOneTrial() {
    assertEquals(1, studiesOf(Design.RANDOMISED));
    assertTrue(studiesOf(Design.RETROSPECTIVE_COMPARATIVE) >= 4);
    assertTrue(studiesOf(Design.PROSPECTIVE_COMPARATIVE) >= 1);
    assertTrue(studiesOf(Design.CASE_REPORT) >= 5);
    for (Study study : STUDIES) {
      boolean single =
          study.arms().stream().anyMatch(arm -> arm.baseline().patients().orElse(0) == 1);
      assertEquals(study.design().orElseThrow() == Design.CASE_REPORT, single, study.id());
    }
  }

  @Test
  void eightTransportArmsReportUnionOfGapsBetweenFiveAndEightCentimetres() {
    LengthRange asked = new LengthRange(5, 8);
    long arms =
        STUDIES.stream()
            .flatMap(
                study ->
                    study.arms().stream()
                        .filter(arm -> arm.method().principal().code().equals("bone-transport"))
                        .filter(arm -> reportsUnion(study, arm))
                        .filter(
                            arm ->
                                ArmDefect.of(study, arm)
                                    .filter(defect -> defect.overlaps(asked))
                                    .isPresent()))
            .count();
    assertTrue(arms >= 8, "only " + arms);
  }

  private static boolean reportsUnion(Study study, Arm arm) {
    return study.outcomes().stream()
        .anyMatch(
            row -> row.scope().armIds().contains(arm.id()) && UNION.contains(row.outcome().code()));
  }

  @Test
  void aboutHalfOfTheRowsOfUnionAreAtAHundredPercent() {
    List<Double> shares =
        STUDIES.stream()
            .flatMap(study -> study.outcomes().stream())
            .filter(row -> UNION.contains(row.outcome().code()) && row.subgroup().isEmpty())
            .flatMap(row -> ((ReportedValue.Events) row.value()).count().share().stream())
            .toList();
    double full = shares.stream().filter(share -> share == 1).count() / (double) shares.size();
    assertTrue(full > 0.38 && full < 0.62, full + " of " + shares.size());
  }

  @Test
  void aboutTwoOfThreeMeansComeWithoutAStandardDeviation() {
    List<Boolean> without =
        STUDIES.stream()
            .flatMap(study -> study.outcomes().stream())
            .map(OutcomeReport::value)
            .filter(ReportedValue.Quantity.class::isInstance)
            .map(value -> ((ReportedValue.Quantity) value).summary())
            .filter(summary -> summary.mean().isPresent())
            .map(summary -> summary.standardDeviation().isEmpty())
            .toList();
    double share = without.stream().filter(b -> b).count() / (double) without.size();
    assertTrue(share > 0.58 && share < 0.74, share + " of " + without.size());
  }

  @Test
  void moreThanHalfAreJudgedByEveryInstrumentAndEveryRiskAndTheJudgementsSayTheyAreInvented() {
    List<Study> judged = STUDIES.stream().filter(one -> !one.appraisals().isEmpty()).toList();
    assertTrue(judged.size() > STUDIES.size() / 2 && judged.size() < STUDIES.size() * 3 / 4);
    Set<String> instruments = new TreeSet<>();
    Set<Risk> risks = new TreeSet<>();
    for (Study study : judged) {
      risks.add(StudyRisk.of(study));
      for (Appraisal appraisal : study.appraisals()) {
        instruments.add(appraisal.instrument().code());
        appraisal.answers().stream()
            .map(one -> one.reason().orElseThrow())
            .forEach(reason -> assertTrue(reason.startsWith("Invented"), reason));
      }
    }
    assertEquals(new TreeSet<>(Instrument.vocabulary().codes()), instruments);
    assertEquals(Set.of(Risk.values()), risks);
    for (Study study : STUDIES) {
      assertTrue(
          study.appraisals().isEmpty() || study.reportKind() != ReportKind.RETRACTION, study.id());
    }
  }

  private static Stream<Arm> arms() {
    return STUDIES.stream().flatMap(study -> study.arms().stream());
  }

  private static long armsOf(String method) {
    return arms().filter(arm -> arm.method().principal().code().equals(method)).count();
  }

  private static long studiesOf(Design design) {
    return STUDIES.stream().filter(study -> study.design().orElseThrow() == design).count();
  }
}
