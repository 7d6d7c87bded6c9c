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

/**
 * Counts of which every arm has no events or only events: the likelihood has no highest point.
 * Limits of the posterior by grids of SciPy: core/src/test/reference/edges.py.
 */
class AllArmsAtALimitTest {
  private static final int[][] SERIES = {{0, 8}, {12, 12}, {9, 9}, {0, 15}, {6, 6}};

  private static ArrayNode series(int[]... counts) {
    ArrayNode rows = Plans.rows();
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    return rows;
  }

  private static void tables(ArrayNode rows, String total, int[]... tables) {
    for (int[] t : tables) {
      Plans.row(
          rows,
          "intervention.events",
          t[0],
          "intervention." + total,
          t[1],
          "comparator.events",
          t[2],
          "comparator." + total,
          t[3]);
    }
  }

  private static String told(JsonNode result) {
    assertFalse(result.has("summary"), result::toString);
    assertFalse(result.has("fit"));
    return result
        .get("warnings")
        .valueStream()
        .filter(one -> one.get("code").asText().equals("estimate-at-limit"))
        .findFirst()
        .orElseThrow()
        .get("message")
        .asText();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 25, 200})
  void ofProportionsIsDecidedFromTheCountsAndTheLimitOfTheAverageTold(int points) {
    ObjectNode plan = Plans.on(series(SERIES), "model", "exact-likelihood");
    String message = told(Plans.result(plan.put("quadraturePoints", points)));
    assertTrue(message.contains("no highest point"), message);
    assertTrue(message.contains("goes to 3 of 5"), message);
    plan.remove("quadraturePoints");
    assertTrue(told(Plans.result(plan.put("likelihood", "beta-binomial"))).contains("3 of 5"));
  }

  @Test
  void ofSmallSeriesToo() {
    told(
        Plans.result(
            Plans.on(
                series(new int[] {2, 2}, new int[] {0, 1}, new int[] {1, 1}, new int[] {1, 1}),
                "model",
                "exact-likelihood",
                "interval",
                "t-k-minus-1")));
  }

  @Test
  void hasAPosteriorWithLimits() {
    JsonNode result =
        Plans.result(Plans.on(series(SERIES), "model", "bayesian", "likelihood", "exact"));
    assertEquals(-1.56773, result.at("/summary/lower").asDouble(), 1e-3);
    assertEquals(0.48983, result.at("/summary/estimate").asDouble(), 1e-3);
    assertEquals(2.68123, result.at("/summary/upper").asDouble(), 1e-3);
  }

  @Test
  void ofOddsAndRateRatiosToo() {
    ArrayNode tables = Plans.rows();
    tables(
        tables, "total", new int[][] {{0, 11, 2, 9}, {4, 7, 0, 12}, {3, 13, 0, 5}, {6, 6, 0, 9}});
    ObjectNode odds = Plans.on(tables, "measure", "odds-ratio", "model", "exact-likelihood");
    told(Plans.result(odds.put("likelihood", "conditional")));
    ArrayNode full = Plans.rows();
    tables(full, "total", new int[][] {{8, 8, 0, 9}, {0, 7, 10, 10}, {6, 6, 0, 11}});
    for (String spread : new String[] {"larger-with-intervention", "equal"}) {
      ObjectNode plan = Plans.on(full, "measure", "odds-ratio", "model", "exact-likelihood");
      told(Plans.result(plan.put("likelihood", "unconditional").put("armSpread", spread)));
    }
    ArrayNode rates = Plans.rows();
    tables(rates, "personTime", new int[][] {{3, 10, 0, 12}, {0, 9, 4, 11}, {5, 20, 0, 14}});
    told(
        Plans.result(
            Plans.on(rates, "measure", "incidence-rate-ratio", "model", "exact-likelihood")));
  }

  @Test
  void ofAGroupOrAlongAModeratorIsSaidThere() {
    ArrayNode rows = series(SERIES);
    for (int i = 0; i < 3; i++) {
      Plans.row(rows, "events", 5 + i, "total", 20);
    }
    for (int i = 0; i < rows.size(); i++) {
      ((ObjectNode) rows.get(i)).put("g", i < SERIES.length ? "ends" : "inside");
    }
    JsonNode groups = Plans.result(Plans.on(rows, "model", "exact-likelihood", "subgroup", "g"));
    assertFalse(groups.at("/subgroups/0").has("summary"));
    assertTrue(groups.at("/subgroups/1").has("summary"));
    assertTrue(Plans.warnings(groups).contains("estimate-at-limit"));
    ArrayNode ends = series(SERIES);
    for (int i = 0; i < ends.size(); i++) {
      ((ObjectNode) ends.get(i)).put("x", i);
    }
    ObjectNode plan = Plans.on(ends, "model", "exact-likelihood");
    plan.putArray("moderators").add("x");
    JsonNode line = Plans.result(plan);
    assertFalse(line.has("regression"));
    assertTrue(Plans.warnings(line).contains("estimate-at-limit"));
  }
}
