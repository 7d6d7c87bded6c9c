package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Moderators on a handful of studies. */
class RegressionOnThreeStudiesTest {
  private static ObjectNode plan(double... x) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < x.length; i++) {
      Plans.row(rows, "effect", 0.2 + 0.3 * i * i, "variance", 0.04, "x", x[i]);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect");
    plan.putArray("moderators").add("x");
    return plan;
  }

  @ParameterizedTest
  @CsvSource({
    "random-effects, hartung-knapp",
    "random-effects, normal",
    "common-effect, hartung-knapp",
    "common-effect, normal"
  })
  void saysThatTheyAreFewAndThatTheyAreAverages(String model, String test) {
    JsonNode result = Plans.result(plan(1, 2, 4).put("model", model).put("moderatorTest", test));
    assertTrue(
        Plans.warnings(result)
            .containsAll(List.of("few-studies-for-moderators", "ecological-bias")));
  }

  @Test
  void ofCountsSaysSoToo() {
    for (String model : new String[] {"random-effects", "exact-likelihood"}) {
      ArrayNode rows = Plans.rows();
      for (int i = 0; i < 3; i++) {
        Plans.row(rows, "events", 4 + 2 * i, "total", 15, "x", i);
      }
      ObjectNode plan = Plans.on(rows, "model", model);
      plan.putArray("moderators").add("x");
      assertTrue(
          Plans.warnings(Plans.result(plan))
              .containsAll(List.of("few-studies-for-moderators", "ecological-bias")));
    }
  }

  /** Through (0, 0.1), (0.1, 0.47) and so on, a straight line in decimals that no double has. */
  @Test
  void onALineHasNoErrorOfRoundingForAStandardError() {
    for (double start : new double[] {0.1, 0.3, 123.456, -0.7}) {
      for (double step : new double[] {0.37, 0.11}) {
        ArrayNode rows = Plans.rows();
        for (int i = 0; i < 5; i++) {
          Plans.row(rows, "effect", start + step * i, "variance", 0.03 + i / 70.0, "x", 0.1 * i);
        }
        ObjectNode plan = Plans.on(rows, "measure", "reported-effect");
        plan.putArray("moderators").add("x");
        JsonNode result = Plans.result(plan);
        assertEquals(0, result.at("/regression/coefficients/1/standardError").asDouble());
        assertFalse(result.at("/regression/coefficients/1").has("pValue"));
        assertTrue(Plans.warnings(result).contains("zero-width-interval"));
      }
    }
  }
}
