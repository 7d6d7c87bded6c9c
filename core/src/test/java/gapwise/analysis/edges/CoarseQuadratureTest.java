package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Studies at limits beside one inside, so that the spread is wider than usual points of a
 * quadrature hold. Tops of the integral itself, over 36,001 true values, by SciPy:
 * core/src/test/reference/edges.py.
 */
class CoarseQuadratureTest {
  private static ArrayNode series(int[]... counts) {
    ArrayNode rows = Plans.rows();
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    return rows;
  }

  private static void holds(double centre, double tau, double log, JsonNode result) {
    double error = result.at("/summary/standardError").asDouble();
    assertEquals(centre, result.at("/summary/estimate").asDouble(), 1e-4 * error);
    assertEquals(tau, result.at("/heterogeneity/tau").asDouble(), 2e-4 * tau);
    assertEquals(log, result.at("/fit/logLikelihood").asDouble(), 3e-7);
  }

  @ParameterizedTest
  @ValueSource(ints = {25, 60, 200})
  void isRefinedUntilProportionsNoLongerMove(int points) {
    int[][] counts = {{0, 14}, {9, 9}, {3, 3}, {0, 10}, {5, 9}, {7, 7}, {6, 6}, {11, 11}};
    holds(
        7.102340814323109,
        14.67758686562506,
        -9.660316619393368,
        Plans.result(
            Plans.on(series(counts), "model", "exact-likelihood").put("quadraturePoints", points)));
  }

  @ParameterizedTest
  @ValueSource(ints = {25, 200})
  void isRefinedUntilRateRatiosNoLongerMove(int points) {
    ArrayNode rows = Plans.rows();
    int[][] rates = {{6, 10, 0, 12}, {0, 9, 7, 11}, {9, 20, 0, 14}, {3, 8, 4, 9}, {0, 15, 5, 12}};
    for (int[] one : rates) {
      Plans.row(
          rows,
          "intervention.events",
          one[0],
          "intervention.personTime",
          one[1],
          "comparator.events",
          one[2],
          "comparator.personTime",
          one[3]);
    }
    holds(
        -0.006854938531765049,
        8.848042889363283,
        -7.340036092621982,
        Plans.result(
            Plans.on(rows, "measure", "incidence-rate-ratio", "model", "exact-likelihood")
                .put("quadraturePoints", points)));
  }

  @Test
  void isSaidToHaveBeenRefined() {
    int[][] counts = {{0, 14}, {9, 9}, {3, 3}, {0, 10}, {5, 9}, {7, 7}, {6, 6}, {11, 11}};
    JsonNode result = Plans.result(Plans.on(series(counts), "model", "exact-likelihood"));
    assertTrue(Plans.warnings(result).contains("quadrature-refined"));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 5, 7})
  void isSaidWhereFewerPointsAreAskedFor(int points) {
    int[][] counts = {{0, 14}, {9, 9}, {3, 3}, {0, 10}, {5, 9}, {7, 7}, {6, 6}, {11, 11}};
    var plan = Plans.on(series(counts), "model", "exact-likelihood");
    assertTrue(
        Plans.warnings(Plans.result(plan.put("quadraturePoints", points)))
            .contains("quadrature-too-coarse"));
    int[][] inside = {{6, 20}, {20, 30}, {12, 40}, {3, 10}, {15, 33}};
    var enough = Plans.on(series(inside), "model", "exact-likelihood");
    assertFalse(
        Plans.warnings(Plans.result(enough.put("quadraturePoints", points)))
            .contains("quadrature-too-coarse"));
  }
}
