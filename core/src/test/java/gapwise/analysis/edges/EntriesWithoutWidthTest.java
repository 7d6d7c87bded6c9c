package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Pooled values of some of the studies whose limits have no width. The factor of Hartung and Knapp
 * (Stat Med 2001;20:3875) is the weighted mean square of the residuals, which is 0 where all
 * effects are equal.
 */
class EntriesWithoutWidthTest {
  /** Three studies that found the same, and one after two of them that did not. */
  private static ArrayNode alikeButTheThird() {
    ArrayNode rows = Plans.rows();
    double[] effects = {0.3, 0.3, 0.9, 0.3};
    for (int i = 0; i < effects.length; i++) {
      Plans.row(rows, "effect", effects[i], "variance", 0.1 + 0.05 * i, "year", 2001 + i);
    }
    return rows;
  }

  private static JsonNode result(ArrayNode rows, String interval) {
    return Plans.result(
        Plans.on(rows, "measure", "reported-effect", "interval", interval, "cumulativeBy", "year")
            .put("influence", true));
  }

  @Test
  void haveNoLimitsAndAreNamed() {
    JsonNode result = result(alikeButTheThird(), "hartung-knapp");
    JsonNode third = result.at("/influence/leaveOneOut/2");
    assertEquals("Study 3", third.get("omitted").asText());
    assertEquals(0.3, third.get("estimate").asDouble(), 1e-12);
    assertFalse(third.has("lower") || third.has("upper"));
    assertTrue(result.at("/influence/leaveOneOut/0").has("lower"));
    JsonNode second = result.at("/cumulative/1");
    assertFalse(second.has("lower") || second.has("upper"));
    assertTrue(result.at("/cumulative/2").has("lower"));
    List<String> said = messages(result);
    assertEquals(2, said.size(), said::toString);
    assertTrue(said.get(0).contains("without Study 3"), said.get(0));
    assertTrue(said.get(1).contains("up to Study 2"), said.get(1));
  }

  /** The same sums by the interval that is never narrower keep the width of the model. */
  @Test
  void keepTheirLimitsWhereTheIntervalIsNeverNarrower() {
    JsonNode result = result(alikeButTheThird(), "hartung-knapp-never-narrower");
    assertTrue(result.at("/influence/leaveOneOut/2").has("lower"));
    assertTrue(result.at("/cumulative/1").has("lower"));
    assertEquals(List.of(), messages(result));
  }

  @Test
  void ofTheRegressionWithoutAStudyAreSaid() {
    ArrayNode rows = Plans.rows();
    double[] effects = {1, 2, 3, 9};
    for (int i = 0; i < effects.length; i++) {
      Plans.row(rows, "effect", effects[i], "variance", 0.25, "length", i);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect").put("influence", true);
    plan.putArray("moderators").add("length");
    JsonNode result = Plans.result(plan);
    JsonNode entries = result.at("/regression/leaveOneOut");
    JsonNode slope = entries.at("/3/coefficients/1");
    assertEquals(1, slope.get("estimate").asDouble(), 1e-12);
    assertTrue(slope.get("lower").asDouble() == slope.get("upper").asDouble());
    assertTrue(messages(result).stream().anyMatch(said -> said.startsWith("without Study 4")));
  }

  /** Effects from a few values, as rounded reports give them. */
  @Test
  void areNeverToldWithLimitsThatAreOneValue() {
    Random random = new Random(7);
    for (int turn = 0; turn < 200; turn++) {
      ArrayNode rows = Plans.rows();
      int studies = 2 + random.nextInt(5);
      for (int i = 0; i < studies; i++) {
        Plans.row(rows, "effect", random.nextInt(2) / 10.0, "variance", 0.1, "year", i);
      }
      JsonNode result = result(rows, "hartung-knapp");
      int without = 0;
      for (String list : List.of("/influence/leaveOneOut", "/cumulative")) {
        for (JsonNode entry : result.at(list)) {
          if (entry.has("lower")) {
            assertTrue(entry.get("lower").asDouble() < entry.get("upper").asDouble());
          } else {
            without++;
          }
        }
      }
      assertEquals(without > 0, !messages(result).isEmpty(), rows::toString);
    }
  }

  private static List<String> messages(JsonNode result) {
    return result
        .get("warnings")
        .valueStream()
        .filter(one -> one.get("code").asText().equals("zero-width-interval"))
        .map(one -> one.get("message").asText())
        .toList();
  }
}
