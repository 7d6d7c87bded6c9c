package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/** Intervals that come to one value weigh as no evidence and say so. */
class IntervalWithoutWidthTest {
  private static ArrayNode series(int[]... counts) {
    ArrayNode rows = Plans.rows();
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    return rows;
  }

  @Test
  void anIntervalWithoutWidthIsNoEvidence() {
    int[][] counts = {{8, 8}, {11, 11}};
    JsonNode multiverse =
        Plans.result(
                Plans.on(series(counts), "task", "multiverse")
                    .put("threshold", 0.8)
                    .put("list", true))
            .get("multiverse");
    assertTrue(
        multiverse.get("notEstimated").findValuesAsText("code").contains("zero-width-interval"));
    int listed = 0;
    for (JsonNode one : multiverse.get("list")) {
      if (one.has("shown")) {
        assertTrue(one.at("/shown/upper").asDouble() > one.at("/shown/lower").asDouble());
        listed++;
      }
    }
    assertEquals(listed, multiverse.get("estimated").asInt());
    assertEquals(0, multiverse.at("/families/1/estimated").asInt(), "no likelihood has a maximum");
  }

  /**
   * Limits below what Miller's formula reaches at this number of patients are both carried to 0.
   */
  @Test
  void carriedBackFromADoubleArcsineIsSaid() {
    int[][] counts = {{0, 18}, {0, 59}, {0, 54}, {0, 19}, {1, 3}, {1, 8}, {0, 17}, {0, 19}};
    JsonNode result =
        Plans.result(
            Plans.on(series(counts), "scale", "double-arcsine", "interval", "normal")
                .put("level", 0.5));
    JsonNode shown = result.at("/summary/shown");
    assertTrue(result.at("/summary/lower").asDouble() < result.at("/summary/upper").asDouble());
    assertEquals(0, shown.get("upper").asDouble());
    assertTrue(Plans.warnings(result).contains("zero-width-interval"));
    assertTrue(shown.at("/exactLikelihood/upper").asDouble() > 0);
    JsonNode wider =
        Plans.result(Plans.on(series(counts), "scale", "double-arcsine", "interval", "normal"));
    assertEquals(
        wider.at("/summary/shown/upper").asDouble() == 0,
        Plans.warnings(wider).contains("zero-width-interval"));
  }

  @Test
  void ofWaldIsSaid() {
    var plan = Plans.on(series(new int[][] {{0, 12}, {5, 12}}), "task", "interval");
    plan.putArray("methods").add("wald").add("wilson");
    assertTrue(Plans.warnings(Plans.result(plan)).contains("zero-width-interval"));
    var inside = Plans.on(series(new int[][] {{5, 12}}), "task", "interval");
    inside.putArray("methods").add("wald");
    assertTrue(Plans.warnings(Plans.result(inside)).isEmpty());
  }
}
