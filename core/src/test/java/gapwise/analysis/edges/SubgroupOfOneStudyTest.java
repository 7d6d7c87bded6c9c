package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/** Groups of studies of which one has a single study. */
class SubgroupOfOneStudyTest {
  private static final double[] EFFECTS = {0.2, 1.1, 0.5, 0.7, 0.1, 1.6};

  private static ObjectNode effects(String groups, String... fields) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < groups.length(); i++) {
      Plans.row(rows, "effect", EFFECTS[i], "variance", 0.08);
      ((ObjectNode) rows.get(i)).put("g", groups.substring(i, i + 1));
    }
    return Plans.on(rows, fields).put("measure", "reported-effect").put("subgroup", "g");
  }

  @Test
  void leavesTheTestOutAndSaysSo() {
    for (String groups : new String[] {"xyx", "xxxxxy", "xxyyyz"}) {
      for (String variance : new String[] {"common-when-few", "separate", "common"}) {
        for (String interval :
            new String[] {"hartung-knapp-never-narrower", "hartung-knapp", "normal"}) {
          JsonNode result =
              Plans.result(effects(groups, "subgroupVariance", variance, "interval", interval));
          assertFalse(result.at("/betweenSubgroups").has("pValue"), groups + variance);
          assertTrue(Plans.warnings(result).contains("no-subgroup-test"), groups + variance);
        }
      }
    }
  }

  @Test
  void leavesItOutForCountsToo() {
    for (String model : new String[] {"random-effects", "common-effect", "exact-likelihood"}) {
      ArrayNode rows = Plans.rows();
      for (int i = 0; i < 5; i++) {
        Plans.row(rows, "events", 3 + i, "total", 14);
        ((ObjectNode) rows.get(i)).put("g", i == 2 ? "nail" : "frame");
      }
      JsonNode result = Plans.result(Plans.on(rows, "subgroup", "g", "model", model));
      assertFalse(result.at("/betweenSubgroups").has("pValue"), model);
      assertTrue(Plans.warnings(result).contains("no-subgroup-test"), model);
      assertTrue(Plans.warnings(result).contains("groups-of-patients-differ"), model);
    }
  }

  /**
   * A common variance estimated from effects that equal each other in their group tells of none.
   */
  @Test
  void besideAGroupOfEqualEffectsHasNoWidthAndSaysSo() {
    ArrayNode rows = Plans.rows();
    for (double effect : new double[] {0.4, 0.4, 1.3}) {
      Plans.row(rows, "effect", effect, "variance", 0.05, "g", effect > 1 ? 2 : 1);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "subgroup", "g");
    JsonNode plain = Plans.result(plan.put("interval", "hartung-knapp"));
    assertEquals(0, plain.at("/subgroups/1/summary/standardError").asDouble());
    assertTrue(Plans.warnings(plain).contains("zero-width-interval"));
    JsonNode usual = Plans.result(plan.put("interval", "hartung-knapp-never-narrower"));
    assertEquals(Math.sqrt(0.05), usual.at("/subgroups/1/summary/standardError").asDouble(), 1e-14);
    assertFalse(Plans.warnings(usual).contains("zero-width-interval"));
  }

  @Test
  void groupsOfSingleArmsCarryTheCautionOfThePages() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      Plans.row(rows, "events", 3 + i, "total", 12);
      ((ObjectNode) rows.get(i)).put("g", i % 2 == 0 ? "frame" : "nail");
    }
    ObjectNode plan = Plans.on(rows, "subgroup", "g");
    assertTrue(Plans.warnings(Plans.result(plan)).contains("groups-of-patients-differ"));
    assertFalse(
        Plans.warnings(Plans.result(effects("aaabbb"))).contains("groups-of-patients-differ"));
  }
}
