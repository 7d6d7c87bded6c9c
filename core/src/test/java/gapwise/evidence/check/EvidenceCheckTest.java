package gapwise.evidence.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.Severity;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The door; what each rule finds is tested at the template, where a reviewer meets it. */
class EvidenceCheckTest {

  /** Invented for this test. */
  private static Study study(String id, String doi, double meanDefectCentimetres) {
    QuantitySummary length =
        QuantitySummary.with(Unit.CENTIMETRES).mean(meanDefectCentimetres).build();
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("autograft")))
            .baseline(Baseline.with().defect(DefectLength.of(length)).build())
            .build();
    return Study.with(id, Citation.with("Invented " + id).doi(doi).build())
        .arms(List.of(arm))
        .build();
  }

  @Test
  void aFindingNamesThePartOfTheRecordAndTheField() {
    List<Finding> findings = EvidenceCheck.of(study("s1", "10.1000/1", 46));
    assertEquals(1, findings.size(), findings.toString());
    assertEquals(Severity.IMPOSSIBLE, findings.get(0).severity());
    assertEquals(new RecordPart.OfArm("s1", "A", "defect_length_mean"), findings.get(0).part());
    assertEquals(List.of(), EvidenceCheck.of(study("s1", "10.1000/1", 14)));
  }

  @Test
  void newStudiesAreComparedWithThoseKnownAndOnlyTheNewAreJudged() {
    Study known = study("old", "10.1000/ABC", 5);
    List<Finding> findings =
        EvidenceCheck.among(
            List.of(study("new", "10.1000/abc", 5), study("other", "10.1000/2", 5)),
            List.of(known, study("older", "10.1000/abc", 5)));
    assertEquals(1, findings.size(), findings.toString());
    assertEquals(new RecordPart.OfStudy("new", "doi"), findings.get(0).part());
    assertTrue(findings.get(0).message().contains("'old'"));
  }

  @Test
  void aNewVersionOfAKnownStudyIsNotItsOwnDouble() {
    Study study = study("s1", "10.1000/1", 5);
    assertEquals(List.of(), EvidenceCheck.among(List.of(study), List.of(study)));
  }

  @Test
  void theSameRecordsGiveTheSameFindingsInTheSameOrder() {
    List<Study> studies =
        IntStream.range(0, 50).mapToObj(n -> study("s" + n, "10.1000/" + n % 7, 5)).toList();
    assertEquals(EvidenceCheck.among(studies, List.of()), EvidenceCheck.among(studies, List.of()));
    assertEquals(43, EvidenceCheck.among(studies, List.of()).size());
  }

  @Test
  void onlyStudiesThatARuleCanWantAreNearAndTheOthersChangeNoFinding() {
    List<Study> fresh = List.of(study("new", "10.1000/abc", 5), atHospital("h1", "2010", "2012"));
    Study sameDoi = study("old", "https://doi.org/10.1000/ABC", 5);
    Study sameHospital = atHospital("h2", "2012", "2015");
    Study far = study("far", "10.1000/2", 5);
    assertTrue(EvidenceCheck.near(fresh).test(sameDoi));
    assertTrue(EvidenceCheck.near(fresh).test(sameHospital));
    assertFalse(EvidenceCheck.near(fresh).test(far));
    List<Finding> all = EvidenceCheck.among(fresh, List.of(sameDoi, far, sameHospital));
    assertEquals(all, EvidenceCheck.among(fresh, List.of(sameDoi, sameHospital)));
    assertEquals(
        List.of("same-paper-twice", "overlapping-cohorts"),
        all.stream().map(Finding::code).toList());
  }

  private static Study atHospital(String id, String from, String to) {
    return study(id, "10.1000/" + id, 5)
        .but()
        .centres(List.of("Invented Hospital"))
        .recruitmentFrom(PartialDate.parse(from).orElseThrow())
        .recruitmentTo(PartialDate.parse(to).orElseThrow())
        .build();
  }

  @Test
  void aLinkedTwinDoesNotHideAnotherThatIsNot() {
    Study linked = study("linked", "10.1000/abc", 5).but().sameStudyAs(List.of("new")).build();
    Study other = study("other", "10.1000/abc", 5);
    List<Finding> findings =
        EvidenceCheck.among(List.of(study("new", "10.1000/abc", 5)), List.of(linked, other));
    assertEquals(1, findings.size(), findings.toString());
    assertTrue(findings.get(0).message().contains("'other'"), findings.toString());
  }
}
