package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/**
 * Series that agree by chance: the likelihood puts the spread between centres at 0, which does not
 * show that a further centre is like these. The model of the pages carries the uncertainty of the
 * spread into the range for a further centre; quantiles by grids of SciPy:
 * core/src/test/reference/edges.py.
 */
class FurtherCentreWithTauAtZeroTest {
  private static final int[][] ALIKE = {
    {17, 20}, {14, 16}, {9, 11}, {21, 23}, {12, 13}, {10, 12}, {18, 21}
  };

  private static ArrayNode series(int[]... counts) {
    ArrayNode rows = Plans.rows();
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    return rows;
  }

  @Test
  void theRangeForAFurtherCentreIsFarWiderThanTheIntervalOfTheMean() {
    JsonNode exact = Plans.result(Plans.on(series(ALIKE), "model", "exact-likelihood"));
    assertEquals(0, exact.at("/heterogeneity/tau").asDouble());
    assertTrue(Plans.warnings(exact).contains("between-study-variance-at-zero"));
    JsonNode summary =
        Plans.result(Plans.on(series(ALIKE), "model", "bayesian", "likelihood", "exact"))
            .get("summary");
    assertEquals(0.86670, summary.get("predictionLower").asDouble(), 2e-3);
    assertEquals(2.92886, summary.get("predictionUpper").asDouble(), 2e-3);
    assertEquals(1.29126, summary.get("lower").asDouble(), 2e-3);
    assertEquals(2.52536, summary.get("upper").asDouble(), 2e-3);
    double further =
        summary.get("predictionUpper").asDouble() - summary.get("predictionLower").asDouble();
    double mean = summary.get("upper").asDouble() - summary.get("lower").asDouble();
    assertTrue(further > 1.5 * mean);
  }
}
