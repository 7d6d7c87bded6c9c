package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.appraisal.StudyRisk;
import gapwise.evidence.Appraisal;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Day;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sheet appraisal of an invented comparison, judged domain by domain. */
class AppraisalRowsTest {
  private static final List<String> DOMAINS =
      List.of(
          "confounding",
          "selection",
          "classification",
          "departures",
          "missing-data",
          "measurement",
          "selective-report");

  private static FilledTemplate judged() {
    FilledTemplate template =
        FilledTemplate.sound().set("studies", 0, "design=retrospective-comparative");
    for (String domain : DOMAINS) {
      template.add(
          "appraisal",
          "study_id=s1",
          "instrument=robins-i",
          "outcome=union",
          "item=" + domain,
          "judgement=" + (domain.equals("confounding") ? "serious" : "low"),
          "reason=crude",
          "place=p. 3",
          "by=AB; CD",
          "on=2026-05-14");
    }
    return template.add(
        "appraisal",
        "study_id=s1",
        "instrument=robins-i",
        "outcome=union",
        "item=overall",
        "judgement=serious",
        "on=2026-05-20");
  }

  private static Study study(FilledTemplate template) {
    Imported.Ready ready = (Imported.Ready) template.read();
    return ready.studies().get(0);
  }

  @Test
  void rowsOfOneMatterBecomeOneAppraisal() {
    assertEquals(List.of(), judged().found());
    List<Appraisal> read = study(judged()).appraisals();
    assertEquals(1, read.size());
    Appraisal one = read.get(0);
    assertEquals(DOMAINS, one.answers().stream().map(Appraisal.Answer::item).toList());
    assertEquals("2016", one.version());
    assertEquals(Optional.of(Outcome.of("union")), one.outcome());
    assertEquals(List.of("AB", "CD"), one.by());
    assertEquals(Day.parse("2026-05-20"), one.on());
    assertEquals("serious", one.overall().orElseThrow().judgement());
    assertEquals(Risk.SERIOUS, StudyRisk.of(study(judged()), Outcome.of("union")));
  }

  @Test
  void anotherOutcomeIsAnotherAppraisal() {
    FilledTemplate two =
        judged()
            .add(
                "appraisal",
                "study_id=s1",
                "instrument=robins-i",
                "outcome=deep-infection",
                "item=overall",
                "judgement=critical");
    List<Problem> found = two.found();
    assertEquals(List.of("appraisal-incomplete"), found.stream().map(Problem::code).toList());
    assertTrue(found.get(0).where().contains("row 10"), found.get(0).where());
  }

  @Test
  void aTemplateWithoutTheSheetReadsAsBefore() {
    assertEquals(List.of(), study(FilledTemplate.sound().without("appraisal")).appraisals());
  }

  @ParameterizedTest(name = "{2}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // row | cells | code | column | words that the message must hold
        "0 | item=confusion | unknown-item | item | Its items are confounding",
        "0 | judgement=high | judgement-not-allowed | judgement | low, moderate, no-information",
        "1 | item=confounding | item-twice | item | row 2",
        "0 | instrument=robins | unknown-code | instrument | Did you mean",
        "0 | judgement= | missing-value | judgement | Judgement",
        "0 | on=14.5.2026 | not-a-day | on | 2026-05-14",
        "0 | study_id=s9 | unknown-study | study_id | no study 's9'",
      })
  void whatCannotBeReadIsRefusedAtItsCell(
      int row, String cells, String code, String column, String words) {
    List<Problem> found = judged().set("appraisal", row, cells.split(";")).found();
    Problem problem =
        found.stream().filter(one -> one.code().equals(code)).findFirst().orElseThrow();
    assertTrue(problem.where().contains("appraisal"), problem.where());
    assertTrue(problem.where().contains(column), problem.where());
    assertTrue(problem.message().contains(words), problem.message());
  }

  @ParameterizedTest(name = "{2}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "7 | judgement=moderate | overall-better-than-worst-domain | judgement",
        "3 | item=overall;outcome=refracture | appraisal-incomplete | item",
      })
  void whatTheInstrumentDoesNotAllowIsDoubted(int row, String cells, String code, String column) {
    List<Problem> found = judged().set("appraisal", row, cells.split(";")).found();
    Problem problem =
        found.stream().filter(one -> one.code().equals(code)).findFirst().orElseThrow();
    assertTrue(problem.where().contains(column), problem.where());
  }

  @Test
  void anInstrumentForOtherDesignsWithoutItsOutcomeIsDoubted() {
    FilledTemplate series = judged().set("studies", 0, "design=randomised");
    for (int row = 0; row < 8; row++) {
      series.set("appraisal", row, "outcome=", "instrument_version=2024");
    }
    assertEquals(
        List.of(
            "appraisal-without-outcome",
            "instrument-for-another-design",
            "instrument-of-another-version"),
        series.found().stream().map(Problem::code).toList());
  }

  /** Numbers of an index and the words of a checklist that elsewhere mean a missing value. */
  @Test
  void answersThatLookLikeNumbersOrMissingValuesAreAnswers() {
    FilledTemplate template =
        FilledTemplate.sound()
            .add("appraisal", "study_id=s1", "instrument=minors", "item=losses", "judgement=0")
            .add(
                "appraisal",
                "study_id=s1",
                "instrument=jbi-case-series",
                "item=sites",
                "judgement=unclear")
            .add(
                "appraisal",
                "study_id=s1",
                "instrument=jbi-case-series",
                "item=complete",
                "judgement=not-applicable");
    assertEquals(
        List.of("appraisal-incomplete", "appraisal-incomplete"),
        template.found().stream().map(Problem::code).toList());
  }
}
