package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A study that tells next to nothing does not move the spread that the others show. */
class OneStudyOfHugeVarianceTest {
  /** Two studies at 1 and -1 with variance 0.5, and a third that lies far off and knows nothing. */
  private static JsonNode heterogeneity(double far, String... more) {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 1, "variance", 0.5);
    Plans.row(rows, "effect", -1, "variance", 0.5);
    Plans.row(rows, "effect", far, "variance", far * far);
    return Plans.ofEffects(rows, more).get("heterogeneity");
  }

  /**
   * Q of the third study about the mean of the two is 1 whatever tau squared is, and that of the
   * two 2/(0.5 + tau squared), so that Q is 2, its degrees of freedom, at 1.5 (Paule and Mandel, J
   * Res Natl Bur Stand 1982;87:377). The restricted likelihood of the two has its top there too:
   * both are as little moved as the third is sure.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1e8, 1e10, 1e12, 1e15})
  void leavesTheEstimateThatTheOthersGive(double far) {
    for (String estimator : new String[] {"paule-mandel", "restricted-maximum-likelihood"}) {
      JsonNode found = heterogeneity(far, "betweenStudyVariance", estimator);
      assertEquals(1.5, found.get("tauSquared").asDouble(), 1e-12, estimator);
    }
  }

  /**
   * With equal effects the log likelihood is less half the sum of log(v + t), so that of the one
   * small variance falls by half of 3.841458820694124 (chi-squared on one, base R) at v (e^3.84...
   * - 1), where the others have not begun to fall.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1e-12, 1e-16, 1e-20})
  void leavesTheProfileLimitOfTheOthers(double small) {
    ArrayNode rows = Plans.rows();
    for (double variance : new double[] {small, 1e4, 1e9}) {
      Plans.row(rows, "effect", 0.3, "variance", variance);
    }
    JsonNode found =
        Plans.ofEffects(rows, "tauSquaredInterval", "profile-likelihood").get("heterogeneity");
    double expected = small * Math.expm1(3.841458820694124);
    assertEquals(expected, found.get("tauSquaredUpper").asDouble(), 1e-8 * expected);
  }

  /** Of variances over many powers of ten too, limits at a lower level lie within the wider. */
  @Test
  void limitsLieWithinThoseOfAHigherLevel() {
    Random random = new Random(11);
    for (int turn = 0; turn < 200; turn++) {
      ArrayNode rows = Plans.rows();
      int studies = 2 + random.nextInt(5);
      for (int i = 0; i < studies; i++) {
        double size = Math.pow(10, random.nextInt(24) - 12);
        Plans.row(rows, "effect", random.nextGaussian() * Math.sqrt(size), "variance", size / 1000);
      }
      for (String kind : new String[] {"q-profile", "profile-likelihood"}) {
        JsonNode wide = limits(rows, kind, 0.95);
        JsonNode narrow = limits(rows, kind, 0.8);
        assertTrue(
            1.000001 * narrow.get("tauSquaredLower").asDouble()
                    >= wide.get("tauSquaredLower").asDouble()
                && narrow.get("tauSquaredUpper").asDouble()
                    <= 1.000001 * wide.get("tauSquaredUpper").asDouble(),
            () -> kind + " " + wide + narrow + rows);
      }
    }
  }

  private static JsonNode limits(ArrayNode rows, String kind, double level) {
    return Plans.result(
            Plans.on(rows, "measure", "reported-effect", "tauSquaredInterval", kind)
                .put("level", level))
        .get("heterogeneity");
  }
}
