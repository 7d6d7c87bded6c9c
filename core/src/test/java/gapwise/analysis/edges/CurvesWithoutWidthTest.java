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
 * Curves whose limits come to one value say so. The restricted mean is the area under the curve and
 * its variance a sum over event times before the last patient's (Irwin, J Hyg 1949;47:188), which
 * is empty where nobody or all at once had the event.
 */
class CurvesWithoutWidthTest {
  private static void patient(ArrayNode rows, String group, double time, int event) {
    rows.addObject().put("group", group).put("time", time).put("event", event);
  }

  private static ObjectNode plan(ArrayNode rows, double horizon) {
    ObjectNode plan = Plans.on(rows, "task", "survival").put("horizon", horizon);
    plan.putObject("compare").put("group", "frame").put("against", "nail");
    return plan;
  }

  @Test
  void everybodyUnitedAtOneTimeIsNoCertaintyOfADifference() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      patient(rows, "frame", 5, 1);
      patient(rows, "nail", 7, 1);
    }
    JsonNode result = Plans.result(plan(rows, 10));
    JsonNode difference = result.at("/comparison/restrictedMeanDifference");
    assertEquals(-2, difference.get("estimate").asDouble(), 1e-12);
    assertEquals(difference.get("lower"), difference.get("upper"));
    assertEquals(1, said(result, "zero-width-interval"));
    assertFalse(result.at("/curves/0").has("medianUpper"), "a curve at 0 has no upper limit");
    assertTrue(warning(result, "limits-left-out").contains("2 medians"));
    JsonNode before = Plans.result(plan(rows, 4));
    assertEquals(0, before.at("/comparison/restrictedMeanDifference/estimate").asDouble());
    assertEquals(1, said(before, "zero-width-interval"), "nobody united before 4");
  }

  /** Areas to 8: 5 of the frame; 1 + 3 (2/3) + 4 (1/3) = 13/3 of the nail, whose error is above. */
  @Test
  void aGroupThatLendsNoSpreadIsNamed() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      patient(rows, "frame", 5, 1);
    }
    patient(rows, "nail", 1, 1);
    patient(rows, "nail", 4, 1);
    patient(rows, "nail", 9, 0);
    JsonNode result = Plans.result(plan(rows, 8));
    JsonNode difference = result.at("/comparison/restrictedMeanDifference");
    assertEquals(5 - 13 / 3.0, difference.get("estimate").asDouble(), 1e-12);
    assertEquals(
        result.at("/curves/1/restrictedMeanStandardError").asDouble(),
        difference.get("standardError").asDouble(),
        1e-12);
    assertEquals(1, said(result, "no-spread-in-a-group"));
  }

  @Test
  void survivalOfNobodyOrEverybodyHasNoLimitsAndSaysSo() {
    ArrayNode rows = Plans.rows();
    for (int time : new int[] {2, 3, 5}) {
      patient(rows, "frame", time, 1);
    }
    ObjectNode plan = Plans.on(rows, "task", "survival");
    plan.putArray("survivalAt").add(1).add(4).add(6);
    JsonNode result = Plans.result(plan);
    assertFalse(result.at("/curves/0/survivalAt/0").has("lower"));
    assertTrue(result.at("/curves/0/survivalAt/1").has("lower"));
    assertFalse(result.at("/curves/0/survivalAt/2").has("upper"));
    assertEquals(2, said(result, "limits-left-out"), "these two, and above the median");
    assertTrue(result.get("warnings").toString().contains("2 times of curves"));
  }

  /** Of 40 patients 2 before, 36 on one day: the limits of the curve pass one half there too. */
  @Test
  void aMedianOnADayOfVisitsIsNoCertainty() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 40; i++) {
      patient(rows, "frame", i < 2 ? 6 : i < 38 ? 12 : 24, 1);
    }
    JsonNode result = Plans.result(Plans.on(rows, "task", "survival"));
    assertEquals(12, result.at("/curves/0/medianLower").asDouble());
    assertEquals(12, result.at("/curves/0/medianUpper").asDouble());
    assertTrue(warning(result, "zero-width-interval").contains("12"));
  }

  /** Patients seen on few fixed days, as at follow-up: whatever has no width is told. */
  @Test
  void noWidthIsNeverUnsaid() {
    Random random = new Random(20);
    for (int turn = 0; turn < 300; turn++) {
      ArrayNode rows = Plans.rows();
      int days = 1 + random.nextInt(3);
      for (String group : List.of("frame", "nail")) {
        for (int i = 0; i <= random.nextInt(12); i++) {
          patient(rows, group, 3.0 * (1 + random.nextInt(days)), random.nextInt(10) < 8 ? 1 : 0);
        }
      }
      ObjectNode plan = plan(rows, 2 + 3.0 * random.nextInt(3));
      plan.putObject("pooledCurve");
      JsonNode result = Plans.result(plan);
      int expected = 0;
      for (String part : List.of("curves", "pooledCurves")) {
        for (JsonNode curve : result.path(part)) {
          boolean none = curve.has("medianLower") && !isWider(curve, "medianLower", "medianUpper");
          expected += none ? 1 : 0;
        }
      }
      JsonNode difference = result.at("/comparison/restrictedMeanDifference");
      expected += difference.has("lower") && !isWider(difference, "lower", "upper") ? 1 : 0;
      assertEquals(expected, said(result, "zero-width-interval"), plan::toString);
    }
  }

  private static boolean isWider(JsonNode part, String lower, String upper) {
    return !part.has(upper) || part.get(lower).asDouble() < part.get(upper).asDouble();
  }

  private static int said(JsonNode result, String code) {
    return (int) Plans.warnings(result).stream().filter(code::equals).count();
  }

  private static String warning(JsonNode result, String code) {
    return result
        .get("warnings")
        .valueStream()
        .filter(one -> one.get("code").asText().equals(code))
        .map(one -> one.get("message").asText())
        .findFirst()
        .orElse("");
  }
}
