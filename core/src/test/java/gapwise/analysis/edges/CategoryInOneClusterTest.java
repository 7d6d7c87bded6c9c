package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/**
 * A category whose rows are all of one cluster: how far it would differ with another cannot be
 * estimated.
 */
class CategoryInOneClusterTest {
  @Test
  void itsRobustErrorIsLeftOut() {
    double[] effects = {1.4, 1.1, 0.5, 0.2, 0.7, 0.35};
    String[] teams = {"T1", "T1", "T2", "T3", "T4", "T5"};
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      Plans.row(rows, "effect", effects[i], "variance", 0.05);
      ((ObjectNode) rows.get(i)).put("g", i < 2 ? "a" : "b").put("team", teams[i]);
    }
    for (String kind : new String[] {"cr2", "cr1", "cr0"}) {
      ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "cluster", "team");
      plan.put("robustVariance", kind).putArray("moderators").add("g");
      JsonNode result = Plans.result(plan);
      // The mean of a is the intercept, and what b differs from it rests on the same team.
      assertFalse(result.has("robust"), kind);
      assertTrue(Plans.warnings(result).contains("told-by-one-cluster"), kind);
      assertTrue(result.has("regression"));
      plan.putArray("moderators").addObject().put("column", "g").put("reference", "b");
      JsonNode turned = Plans.result(plan);
      assertEquals(1, turned.at("/robust/coefficients").size(), kind);
      assertEquals("intercept", turned.at("/robust/coefficients/0/term").asText());
    }
  }

  @Test
  void ofTwoClustersItRestsOnTooFewDegreesOfFreedomAndSaysSo() {
    double[] effects = {1.4, 1.1, 0.5, 0.2, 0.7, 0.35};
    String[] teams = {"T1", "T2", "T3", "T4", "T5", "T5"};
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      Plans.row(rows, "effect", effects[i], "variance", 0.05);
      ((ObjectNode) rows.get(i)).put("g", i < 2 ? "a" : "b").put("team", teams[i]);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "cluster", "team");
    plan.putArray("moderators").add("g");
    JsonNode result = Plans.result(plan);
    assertEquals("cr2", result.at("/plan/robustVariance").asText());
    assertTrue(result.at("/robust/coefficients/0/degreesOfFreedom").asDouble() < 4);
    assertTrue(Plans.warnings(result).contains("few-clusters"));
  }
}
