package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/** Rows, comparisons and further studies whose limits come to one value. */
class RowsWithoutWidthTest {
  @Test
  void ofAFullArmOnTheRawScaleHaveNoLimitsAndAreNamed() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 9, "total", 9);
    Plans.row(rows, "events", 5, "total", 9);
    JsonNode result = Plans.result(Plans.on(rows, "scale", "raw"));
    assertFalse(result.at("/studies/0").has("lower"));
    assertTrue(result.at("/studies/0/shown/lower").asDouble() < 1, "the exact interval stays");
    assertTrue(result.at("/studies/1").has("lower"));
    assertTrue(said(result).contains("Study 1"), said(result));
  }

  /** 1e-40 beside 1: the least that a double tells beside 1 is 2e-16. */
  @Test
  void whoseErrorIsLostBesideTheirEffectAreNamed() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 1, "variance", 1e-40);
    Plans.row(rows, "effect", 2, "variance", 0.5);
    JsonNode result = Plans.ofEffects(rows);
    assertFalse(result.at("/studies/0").has("upper"));
    assertTrue(said(result).contains("Study 1"), said(result));
  }

  @Test
  void ofANetworkAreNamedWithTheComparison() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 1, "variance", 1e-40);
    Plans.row(rows, "effect", 2, "variance", 0.5);
    ((ObjectNode) rows.get(0)).put("treatment", "nail").put("against", "frame");
    ((ObjectNode) rows.get(1)).put("treatment", "plate").put("against", "frame");
    JsonNode result = Plans.ofEffects(rows, "model", "network");
    assertFalse(result.at("/studies/0").has("lower"));
    assertTrue(said(result).contains("nail"), said(result));
    assertTrue(said(result).contains("Study 1"), said(result));
  }

  /** Equal effects: by the Hartung-Knapp standard error the further study lies nowhere else. */
  @Test
  void ofAFurtherStudyAreNoCertainty() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 5; i++) {
      Plans.row(rows, "effect", 0.4, "variance", 0.2 + 0.1 * i);
    }
    JsonNode none = Plans.ofEffects(rows, "predictionStandardError", "hartung-knapp");
    assertEquals(none.at("/summary/predictionLower"), none.at("/summary/predictionUpper"));
    assertTrue(said(none).contains("further study"), said(none));
    JsonNode some = Plans.ofEffects(rows, "predictionStandardError", "sum-of-weights");
    assertEquals("", said(some));
  }

  private static String said(JsonNode result) {
    StringBuilder said = new StringBuilder();
    for (JsonNode one : result.get("warnings")) {
      if (one.get("code").asText().equals("zero-width-interval")) {
        said.append(one.get("message").asText()).append(' ');
      }
    }
    return said.toString();
  }
}
