package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows of one study pooled as if they were of several. */
class SameStudyTwiceTest {
  private static ObjectNode proportions(int... events) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < events.length; i++) {
      rows.addObject()
          .put("study", i < 2 ? "A" : "B" + i)
          .put("events", events[i])
          .put("total", 9)
          .put("part", i % 2 == 0 ? "x" : "y");
    }
    return Plans.on(rows);
  }

  @Test
  void oneStudyGivenTwiceWithTheSameNumbersIsWarnedOf() {
    for (String model : new String[] {"random-effects", "exact-likelihood", "common-effect"}) {
      JsonNode twice = Plans.result(proportions(5, 5, 7, 6).put("model", model));
      assertTrue(Plans.warnings(twice).contains("study-given-twice"), model);
      JsonNode other = Plans.result(proportions(5, 6, 7, 6).put("model", model));
      assertTrue(Plans.warnings(other).contains("several-rows-of-one-study"), model);
      assertFalse(Plans.warnings(other).contains("study-given-twice"), model);
    }
    assertTrue(
        Plans.warnings(Plans.result(proportions(5, 5, 7, 6).put("task", "multiverse")))
            .contains("study-given-twice"));
  }

  @Test
  void rowsThatAreKnownToHangTogetherNeedNoWarning() {
    JsonNode levels =
        Plans.result(proportions(5, 6, 7, 6).put("model", "three-level").put("cluster", "study"));
    assertFalse(Plans.warnings(levels).contains("several-rows-of-one-study"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"random-effects", "common-effect", "bayesian"})
  void ofTwoGroupsAndGivenEffectsToo(String model) {
    ArrayNode effects = Plans.rows();
    ArrayNode tables = Plans.rows();
    for (int i = 0; i < 3; i++) {
      Plans.row(effects, "effect", i < 2 ? 0.3 : 0.8, "variance", 0.05);
      Plans.row(
          tables,
          "intervention.events",
          i < 2 ? 3 : 6,
          "intervention.total",
          11,
          "comparator.events",
          5,
          "comparator.total",
          12);
      if (i < 2) {
        ((ObjectNode) effects.get(i)).put("study", "A");
        ((ObjectNode) tables.get(i)).put("study", "A");
      }
    }
    for (ObjectNode plan :
        new ObjectNode[] {
          Plans.on(effects, "measure", "reported-effect"), Plans.on(tables, "measure", "odds-ratio")
        }) {
      JsonNode result = Plans.result(plan.put("model", model));
      assertEquals(2, result.at("/data/studies").asInt());
      assertTrue(Plans.warnings(result).contains("study-given-twice"), model);
    }
  }
}
