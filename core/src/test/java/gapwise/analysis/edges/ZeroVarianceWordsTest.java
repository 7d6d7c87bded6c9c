package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is advised of a variance of 0 can be done with the measure that the plan pools. */
class ZeroVarianceWordsTest {
  private static ArrayNode rows(String measure) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 5; i++) {
      switch (measure) {
        case "proportion" -> Plans.row(rows, "events", 5 + i, "total", 9, "length", i);
        case "risk-difference" ->
            Plans.row(
                rows,
                "intervention.events",
                0,
                "intervention.total",
                9 + i,
                "comparator.events",
                0,
                "comparator.total",
                8,
                "length",
                i);
        case "mean" -> Plans.row(rows, "n", 5 + i, "mean", 2 * i + 1, "sd", 0, "length", i);
        default -> Plans.row(rows, "effect", 0.1 * i, "variance", 0, "length", i);
      }
    }
    return rows;
  }

  @ParameterizedTest
  @CsvSource({
    "proportion, double arcsine scale",
    "risk-difference, leave it out",
    "mean, check the standard deviation",
    "reported-effect, 'check the standard error, variance'",
  })
  void areTrueOfTheMeasure(String measure, String advice) {
    for (String model : List.of("random-effects", "common-effect", "bayesian")) {
      for (boolean moderated : new boolean[] {false, true}) {
        if (moderated && model.equals("bayesian")) {
          continue;
        }
        ObjectNode plan = Plans.on(rows(measure), "measure", measure, "model", model);
        if (measure.equals("proportion")) {
          plan.put("scale", "raw");
        }
        if (model.equals("bayesian")) {
          plan.putObject("prior").putObject("tau").put("halfNormal", 1);
        }
        if (moderated) {
          plan.putArray("moderators").add("length");
        }
        List<String> said = said(Plans.result(plan));
        assertFalse(said.isEmpty(), () -> plan + " says nothing of it");
        for (String one : said) {
          assertTrue(one.contains(advice), one);
          assertEquals(measure.equals("proportion"), one.contains("scale"), one);
        }
      }
    }
  }

  /** What is said of the whole, not of the one row. */
  private static List<String> said(JsonNode result) {
    return result
        .get("warnings")
        .valueStream()
        .filter(one -> one.get("code").asText().equals("zero-variance") && !one.has("study"))
        .map(one -> one.get("message").asText())
        .toList();
  }
}
