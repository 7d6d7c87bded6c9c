package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Networks whose direct and indirect evidence contradict each other. */
class LoopsThatContradictTest {
  @Test
  void loopsThatContradictAreWarnedOfBeforeAnyRanking() {
    ArrayNode rows = Plans.rows();
    Networks.contrast(rows, "1", "A", "B", 1, 0.1);
    Networks.contrast(rows, "2", "B", "C", 1, 0.1);
    Networks.contrast(rows, "3", "A", "C", -2, 0.1);
    Networks.contrast(rows, "4", "A", "B", 1.1, 0.1);
    Networks.contrast(rows, "5", "B", "C", 0.8, 0.1);
    Networks.contrast(rows, "6", "A", "C", -1.8, 0.1);
    ObjectNode plan = Networks.contrasts(rows);
    JsonNode silent = Plans.result(plan);
    assertFalse(silent.get("network").has("ranking"));
    assertFalse(silent.get("plan").has("better"));
    List<String> warnings = Plans.warnings(silent);
    assertTrue(warnings.containsAll(List.of("loops-contradict", "no-ranking")));
    JsonNode ranked = Plans.result(plan.put("better", "higher"));
    warnings = Plans.warnings(ranked);
    assertTrue(
        warnings.indexOf("loops-contradict") < warnings.indexOf("ranks-hide-size-and-certainty"));
    assertTrue(warnings.contains("loops-contradict"));
    JsonNode first = ranked.at("/network/ranking/0");
    List<String> fields = new ArrayList<>();
    first.fieldNames().forEachRemaining(fields::add);
    assertEquals("meanRank", fields.get(1));
    assertEquals("pScore", fields.get(fields.size() - 1));
  }

  @Test
  void ofArmsToo() {
    ArrayNode rows = Plans.rows();
    Networks.counts(rows, "1", "A", 30, 100, "B", 60, 100);
    Networks.counts(rows, "2", "B", 30, 100, "C", 60, 100);
    Networks.counts(rows, "3", "A", 70, 100, "C", 20, 100);
    Networks.counts(rows, "4", "A", 28, 90, "B", 55, 95);
    Networks.counts(rows, "5", "A", 65, 90, "C", 22, 95);
    for (String effects : new String[] {"random", "common"}) {
      ObjectNode plan = Networks.arms(rows, "odds-ratio", "networkEffects", effects);
      List<String> warnings = Plans.warnings(Plans.result(plan.put("better", "lower")));
      assertTrue(warnings.contains("loops-contradict"), effects);
      assertTrue(
          warnings.indexOf("loops-contradict") < warnings.indexOf("ranks-hide-size-and-certainty"));
    }
  }
}
