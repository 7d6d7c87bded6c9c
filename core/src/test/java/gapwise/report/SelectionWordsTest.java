package gapwise.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Origin;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.EvidenceRows;
import gapwise.analysis.rows.RowValue;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.problem.Problems;
import gapwise.selection.QuestionJson;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What the paragraph says of a question to the evidence base, and of what came of it. */
class SelectionWordsTest {
  private static final Origin ORIGIN =
      new Origin("1.2.3", OptionalLong.of(41), Optional.of(LocalDate.of(2026, 3, 2)));

  private static final ObjectMapper JSON = new ObjectMapper();

  private static Map<String, RowValue> row(String study, double n, double mean, double sd) {
    return Map.of(
        "study", new RowValue.Text(study),
        "studyId", new RowValue.Text("id-" + study),
        "armId", new RowValue.Text("A"),
        "events", new RowValue.Number(Math.floor(n / 2)),
        "total", new RowValue.Number(n),
        "n", new RowValue.Number(n),
        "mean", new RowValue.Number(mean),
        "sd", new RowValue.Number(sd));
  }

  private static Telling told(ObjectNode evidence, String measure, Result.Warning... warnings) {
    EvidenceRows rows =
        (asked, word) -> {
          Problems problems = new Problems();
          QuestionJson.read(asked, problems);
          assertEquals(List.of(), problems.list());
          return new EvidenceRows.Selected(
              List.of(row("First 2019", 12, 9, 2), row("Second 2020", 20, 11, 3)),
              List.of(warnings),
              List.of(),
              "abc");
        };
    ObjectNode plan = JSON.createObjectNode().put("measure", measure);
    plan.putObject("source").set("evidence", evidence);
    PlanOutcome outcome = Runner.with(rows).run(plan, Optional.empty());
    assertTrue(outcome instanceof PlanOutcome.Done, () -> outcome.json().toString());
    return MethodsParagraph.told(((PlanOutcome.Done) outcome).result(), ORIGIN);
  }

  private static ObjectNode evidence(String fields) {
    try {
      return (ObjectNode) JSON.readTree("{" + fields.replace('\'', '"') + "}");
    } catch (JsonProcessingException wrong) {
      throw new AssertionError(wrong);
    }
  }

  @Test
  void everythingThatNarrowsAQuestionIsSaidEachInItsOwnWords() {
    String detail = MethodDetail.all().get(0).code();
    String method = Method.vocabulary().all().get(0).code();
    List<String> asked =
        List.of(
            "'methods':['" + method + "']",
            "'defectLengthFromCentimetres':3,'defectLengthToCentimetres':8",
            "'defectLengthFromCentimetres':3",
            "'defectLengthFromCentimetres':3,'defectLengthToCentimetres':8,'defectMatch':'centre'",
            "'defectLengthFromCentimetres':3,'defectLengthToCentimetres':8,'defectMatch':'one-sided'",
            "'defectMatch':'one-sided'",
            "'defectMatch':'no-centre'",
            "'defectMatch':'unknown'",
            "'bones':['tibia']",
            "'segments':['42']",
            "'details':['" + detail + "']",
            "'infected':['yes']",
            "'infected':['no']",
            "'infected':['mixed']",
            "'infected':['unclear']",
            "'designs':['series']",
            "'risks':['low','not-rated']",
            "'yearFrom':1990",
            "'yearTo':2010",
            "'followUpFromMonths':24",
            "'status':'verified'",
            "'text':'hexapod'",
            "'clock':'docking'",
            "'unstatedClock':'keep'",
            "'unstatedClock':'leave-out'",
            "'conversions':'none'",
            "'suspectedOverlap':'leave-out'",
            "'minimumPatients':8",
            "'minimumPatients':1");
    String outcome = "'outcome':'time-to-union'";
    Set<List<List<String>>> all = new LinkedHashSet<>();
    all.add(told(evidence(outcome), "mean").paragraphs());
    for (String one : asked) {
      assertTrue(all.add(told(evidence(outcome + "," + one), "mean").paragraphs()), one);
    }
    assertEquals(asked.size() + 1, all.size());
  }

  @Test
  void whatHasNoBearingOnAnOutcomeIsNotSaid() {
    List<List<String>> plain = told(evidence("'outcome':'union'"), "proportion").paragraphs();
    for (String without :
        List.of("'clock':'docking'", "'unstatedClock':'keep'", "'conversions':'none'")) {
      assertEquals(
          plain,
          told(evidence("'outcome':'union'," + without), "proportion").paragraphs(),
          without);
    }
    assertNotEquals(plain, told(evidence("'outcome':'deep-infection'"), "proportion").paragraphs());
    assertNotEquals(
        plain,
        told(evidence("'outcome':'union','definition':'three-cortices'"), "proportion")
            .paragraphs());
  }

  private static Result.Warning of(String code, String study, String id) {
    return Result.Warning.of(code, "words", study).about(Optional.of(id), Optional.of("A"));
  }

  @Test
  void conversionsAndReportsThatWereNotUsedAreCounted() {
    List<Result.Warning> warnings = new ArrayList<>();
    for (String code :
        List.of(
            "converted-from-range",
            "converted-from-quartiles",
            "converted-from-limits",
            "converted-from-standard-error",
            "patients-of-the-arm-taken",
            "median-alone",
            "median-not-converted")) {
      warnings.add(of(code, "First 2019", "id-First 2019"));
    }
    warnings.add(of("superseded", "Third 2001", "id-3"));
    warnings.add(of("superseded", "Fourth 2001", "id-4"));
    warnings.add(of("too-few-patients", "Fifth 2001", "id-5"));
    String text =
        String.join(
            " ",
            told(
                    evidence("'outcome':'time-to-union'"),
                    "mean",
                    warnings.toArray(new Result.Warning[0]))
                .paragraphs()
                .get(0));
    assertTrue(
        text.contains(
            "3 reports of the outcome could not be used (2 superseded by a later report; 1 of too"
                + " few patients)."),
        text);
    assertTrue(
        text.contains("In 1 row the standard deviation was estimated from the range [2]."), text);
    assertTrue(text.contains("In 1 row the standard deviation was calculated from the 95 %"), text);
  }

  @Test
  void theStateOfTheEvidenceIsSaidOfItsRowsAlone() {
    Telling telling = told(evidence("'outcome':'union'"), "proportion");
    List<String> last = telling.paragraphs().get(telling.paragraphs().size() - 1);
    assertTrue(
        last.contains("The evidence base stood at change 41 of 2026-03-02."), last::toString);
    assertTrue(
        last.get(0).startsWith("All calculations were made with Gapwise version 1.2.3 on Java"));
  }
}
