package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the multiverse marks as shown on pages is what the usual plan of a question gives. */
class AnalysisOfPagesTest {
  private static void agree(String outcome, ArrayNode rows) {
    Question question = Question.about(Outcome.of(outcome), SearchRequest.EVERYTHING);
    ObjectNode usual = QuestionPlan.of(question, "invented", false).orElseThrow();
    usual.putObject("source").set("rows", rows);
    JsonNode shown = Plans.result(usual).get("summary");
    ObjectNode all =
        Plans.on(
            rows,
            "task",
            "multiverse",
            "measure",
            usual.get("measure").asText(),
            "scale",
            usual.get("scale").asText());
    JsonNode pages = Plans.result(all).at("/multiverse/pages");
    for (String field : List.of("estimate", "lower", "upper")) {
      assertEquals(shown.get(field), pages.get(field), outcome + " " + field);
    }
  }

  @Test
  void ofSharesIsThatOfTheUsualPlan() {
    ArrayNode rows = Plans.rows();
    int[][] series = {{13, 15}, {17, 18}, {12, 12}, {20, 23}};
    for (int[] one : series) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    agree("union", rows);
  }

  @Test
  void ofTimesIsThatOfTheUsualPlan() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 12, "mean", 6, "sd", 1.5);
    Plans.row(rows, "n", 16, "mean", 8, "sd", 2);
    Plans.row(rows, "n", 20, "mean", 9, "sd", 3);
    agree("external-fixation-time", rows);
  }
}
