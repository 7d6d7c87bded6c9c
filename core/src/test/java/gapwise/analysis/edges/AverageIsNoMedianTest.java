package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is told as on average is the mean over centres, and their median is named apart: of uneven
 * series they lie far from each other. Values by SciPy: core/src/test/reference/edges.py.
 */
class AverageIsNoMedianTest {
  private static ArrayNode series(int[]... counts) {
    ArrayNode rows = Plans.rows();
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    return rows;
  }

  private static final int[][] UNEVEN = {
    {4, 12}, {17, 18}, {15, 15}, {8, 11}, {3, 9}, {22, 22}, {16, 16}
  };

  @Test
  void ofTheExactLikelihoodBothStandUnderTheirOwnNames() {
    JsonNode shown =
        Plans.result(Plans.on(series(UNEVEN), "model", "exact-likelihood")).at("/summary/shown");
    assertEquals(0.9304393684870019, shown.get("estimate").asDouble(), 1e-5);
    assertEquals(0.7903340002191387, shown.get("average").asDouble(), 1e-5);
    assertTrue(shown.get("averageLower").asDouble() < 0.7903);
    assertTrue(shown.get("averageUpper").asDouble() > 0.7903);
  }

  /** The mean of 1/(1 + exp(-x)) over a normal distribution by Simpson's rule. */
  private static double mean(double centre, double tau) {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i <= 4000; i++) {
      double z = (i - 2000) / 220.0;
      double weight = Math.exp(-z * z / 2) * (i % 2 == 0 ? 2 : 4);
      sum += weight / (1 + Math.exp(-centre - tau * z));
      weights += weight;
    }
    return sum / weights;
  }

  @ParameterizedTest
  @CsvSource({
    "random-effects, restricted-maximum-likelihood, 0.95",
    "random-effects, dersimonian-laird, 0.8",
    "exact-likelihood, restricted-maximum-likelihood, 0.99"
  })
  void averageAndItsLimitsAreMeansOverTheDistributionsAtTheMedianAndItsLimits(
      String model, String estimator, double level) {
    var plan = Plans.on(series(UNEVEN), "model", model).put("level", level);
    if (model.equals("random-effects")) {
      plan.put("betweenStudyVariance", estimator);
    }
    JsonNode result = Plans.result(plan);
    double tau = result.at("/heterogeneity/tau").asDouble();
    String[][] names = {
      {"estimate", "average"}, {"lower", "averageLower"}, {"upper", "averageUpper"}
    };
    for (String[] name : names) {
      assertEquals(
          mean(result.at("/summary/" + name[0]).asDouble(), tau),
          result.at("/summary/shown/" + name[1]).asDouble(),
          1e-8,
          name[1]);
    }
  }
}
