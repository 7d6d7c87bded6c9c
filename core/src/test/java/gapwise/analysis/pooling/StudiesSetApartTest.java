package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/** One study that cannot be pooled, or comes twice, among others that can. */
class StudiesSetApartTest {
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
    int[] without = {0, 10, 0, 12};
    int[] first = {3, 20, 5, 20};
    int[] second = {2, 15, 6, 18};
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
}
