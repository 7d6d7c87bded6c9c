package gapwise.analysis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.PlanText;
import gapwise.analysis.testing.Plans;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Means without a standard deviation borrow that of the others as one of several ways (Furukawa and
 * others, J Clin Epidemiol 2006;59:7). Expected values are worked out by hand beside each.
 */
class BorrowedSpreadTest {
  private static ArrayNode rows(boolean third) {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 10, "mean", 10, "sd", 2);
    Plans.row(rows, "n", 20, "mean", 12, "sd", 3);
    if (third) {
      Plans.row(rows, "n", 15, "mean", 14);
    }
    return rows;
  }

  private static JsonNode result(ArrayNode rows, String more) {
    ObjectNode plan = Plans.on(rows, "task", "multiverse", "measure", "mean");
    plan.setAll((ObjectNode) PlanText.parse("{" + more.replace('\'', '"') + "}"));
    return Plans.result(plan);
  }

  private static List<Double> shown(JsonNode result) {
    List<Double> values = new ArrayList<>();
    result.at("/multiverse/list").forEach(one -> values.add(one.at("/shown/estimate").asDouble()));
    return values;
  }

  /** Pooled variance (9 x 4 + 19 x 9)/28 = 207/28; weights n/s^2. */
  @Test
  void onTheRawScaleThePooledDeviationIsLent() {
    JsonNode result =
        result(
            rows(true),
            "'model':'common-effect','scale':'raw','list':true,"
                + "'vary':{'missingSpread':['leave-out','borrow']}");
    double lent = 15 * 28 / 207.0;
    assertEquals("missingSpread", result.at("/multiverse/choices/2/choice").asText());
    assertEquals("borrow", result.at("/multiverse/choices/2/levels/1/level").asText());
    List<Double> values = shown(result);
    assertEquals((2.5 * 10 + 20 / 9.0 * 12) / (2.5 + 20 / 9.0), values.get(0), 1e-12);
    assertEquals(
        (2.5 * 10 + 20 / 9.0 * 12 + lent * 14) / (2.5 + 20 / 9.0 + lent), values.get(1), 1e-12);
    assertEquals(
        values.get(0), result.at("/multiverse/own/shown/estimate").asDouble(), 1e-12, "as ever");
  }

  /** Pooled squared coefficient of variation (9 x 0.04 + 19 x 0.0625)/28 = 1.5475/28. */
  @Test
  void onTheLogScaleThePooledCoefficientOfVariationIsLent() {
    JsonNode result =
        result(
            rows(true),
            "'model':'common-effect','scale':'log','list':true,'vary':{'missingSpread':['borrow']}");
    double lent = 15 * 28 / 1.5475;
    double log =
        (250 * Math.log(10) + 320 * Math.log(12) + lent * Math.log(14)) / (250 + 320 + lent);
    assertEquals(Math.exp(log), shown(result).get(0), 1e-12);
  }

  @Test
  void withoutVaryBorrowingIsAmongTheWaysWhereASpreadIsMissing() {
    JsonNode with = result(rows(true), "");
    JsonNode without = result(rows(false), "");
    assertTrue(with.at("/multiverse/choices").toString().contains("missingSpread"));
    assertTrue(!without.at("/multiverse/choices").toString().contains("missingSpread"));
  }

  @Test
  void askedForWhereNoneIsMissingItIsSaidToHaveNoBearing() {
    JsonNode result = result(rows(false), "'vary':{'missingSpread':['borrow']}");
    assertTrue(Plans.warnings(result).contains("setting-not-used"), result::toString);
  }

  @Test
  void anotherMeasureHasNoneToLend() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 3, "total", 10);
    Plans.row(rows, "events", 5, "total", 12);
    ObjectNode plan = Plans.on(rows, "task", "multiverse");
    plan.set("vary", PlanText.parse("{\"missingSpread\":[\"borrow\"]}"));
    assertEquals(List.of("vary.missingSpread field-not-for-measure"), Plans.problems(plan));
  }
}
