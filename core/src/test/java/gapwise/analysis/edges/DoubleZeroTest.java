package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/**
 * One study without events in either group, or with a standard deviation of 0, among others: it
 * alone is left out.
 */
class DoubleZeroTest {
  private static void tables(ArrayNode rows, int[]... tables) {
    for (int[] t : tables) {
      Plans.row(
          rows,
          "intervention.events",
          t[0],
          "intervention.total",
          t[1],
          "comparator.events",
          t[2],
          "comparator.total",
          t[3]);
    }
  }

  private static JsonNode riskDifference(int[]... tables) {
    ArrayNode rows = Plans.rows();
    tables(rows, tables);
    return Plans.result(Plans.on(rows, "measure", "risk-difference"));
  }

  @Test
  void aRiskDifferenceWithoutEventsIsLeftOutAloneAndTheRestIsPooled() {
    int[] without = {0, 14, 0, 11};
    int[] first = {4, 22, 7, 25};
    int[] second = {3, 17, 8, 19};
    JsonNode rest = riskDifference(first, second);
    JsonNode all = riskDifference(without, first, second);
    assertEquals(rest.at("/summary/estimate"), all.at("/summary/estimate"));
    assertEquals(rest.at("/summary/lower"), all.at("/summary/lower"));
    assertEquals(0, all.at("/studies/0/effect").asDouble());
    assertFalse(all.at("/studies/0").has("variance"), "a variance of 0 is no certainty");
    assertFalse(all.at("/studies/0").has("weightPercent"));
    assertTrue(
        all.get("warnings")
            .valueStream()
            .anyMatch(
                one ->
                    one.get("code").asText().equals("zero-variance")
                        && one.path("study").asText().equals("Study 1")));
  }

  @Test
  void whereNoStudyHasAVarianceNothingIsPooled() {
    JsonNode none = riskDifference(new int[] {0, 10, 0, 12}, new int[] {0, 7, 0, 9});
    assertFalse(none.has("summary"));
    assertTrue(Plans.warnings(none).contains("zero-variance"));
  }

  @Test
  void aMeanWithoutSpreadIsLeftOutAlone() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 3, "mean", 6, "sd", 0);
    Plans.row(rows, "n", 10, "mean", 7, "sd", 2);
    Plans.row(rows, "n", 20, "mean", 9, "sd", 3);
    JsonNode result = Plans.result(Plans.on(rows, "measure", "mean", "model", "common-effect"));
    // Weights 10/4 and 20/9: (2.5 x 7 + 2.2222 x 9)/4.7222 by hand.
    assertEquals(
        (2.5 * 7 + 20.0 / 9 * 9) / (2.5 + 20.0 / 9),
        result.at("/summary/estimate").asDouble(),
        1e-13);
    assertTrue(Plans.warnings(result).contains("zero-variance"));
  }

  @Test
  void rawProportionsOfFullArmsAreStillRefusedAsAWhole() {
    // Without the full arms the rest would be another proportion.
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 9, "total", 9);
    Plans.row(rows, "events", 5, "total", 9);
    Plans.row(rows, "events", 6, "total", 9);
    JsonNode result = Plans.result(Plans.on(rows, "scale", "raw"));
    assertFalse(result.has("summary"));
    assertTrue(Plans.warnings(result).contains("zero-variance"));
  }
}
