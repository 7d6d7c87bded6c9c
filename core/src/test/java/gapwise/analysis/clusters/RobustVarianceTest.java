package gapwise.analysis.clusters;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/**
 * Standard errors that allow for clusters. Values by whole matrices in NumPy 2.4 and SciPy 1.17:
 * core/src/test/reference/robust_variance.py.
 */
class RobustVarianceTest {
  private static final double[] EFFECTS = {
    0.1, 0.6, 0.7, 1.4, 0.2, -0.35, 1.1, 1.5, 0.9, 0.4, 0.05, 0.8
  };
  private static final double[] VARIANCES = {
    0.04, 0.05, 0.03, 0.06, 0.02, 0.08, 0.05, 0.02, 0.1, 0.04, 0.07, 0.03
  };
  private static final String TEAMS = "AABBCCDDDEEF";
  private static final double[] LENGTHS = {1, 2, 2, 3, 1, 4, 3, 2, 5, 4, 1, 2};
  private static final double[] YEARS = {3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8};

  private static ObjectNode plan(String model, String... moderators) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < EFFECTS.length; i++) {
      Plans.row(
          rows,
          "effect",
          EFFECTS[i],
          "variance",
          VARIANCES[i],
          "length",
          LENGTHS[i],
          "begun",
          YEARS[i]);
      ((ObjectNode) rows.get(i)).put("team", TEAMS.substring(i, i + 1));
    }
    ObjectNode plan =
        Plans.on(rows, "measure", "reported-effect", "model", model, "cluster", "team");
    for (String moderator : moderators) {
      plan.withArray("moderators").add(moderator);
    }
    return plan;
  }

  private static JsonNode coefficient(JsonNode result, int place) {
    return result.at("/robust/coefficients/" + place);
  }

  private static void assertErrors(JsonNode result, double tolerance, double... errors) {
    for (int i = 0; i < errors.length; i++) {
      assertEquals(errors[i], coefficient(result, i).get("standardError").asDouble(), tolerance);
    }
  }

  private static void assertDegrees(JsonNode result, double tolerance, double... degrees) {
    for (int i = 0; i < degrees.length; i++) {
      assertEquals(
          degrees[i], coefficient(result, i).get("degreesOfFreedom").asDouble(), tolerance);
    }
  }

  @Test
  void aMeanOfClustersIsToldByBiasReductionWhereNoKindIsNamed() {
    JsonNode result = Plans.result(plan("common-effect"));
    assertEquals("cr2", result.at("/plan/robustVariance").asText());
    assertErrors(result, 1e-11, 0.25085615716);
    assertDegrees(result, 1e-10, 4.528742015156);
    assertEquals(0.04734336662192672, coefficient(result, 0).get("pValue").asDouble(), 1e-11);
    assertFalse(result.at("/robust").has("moderatorTest"));
    assertFalse(Plans.warnings(result).contains("few-clusters"));
  }

  @Test
  void severalCoefficientsAgreeWithWholeMatricesAndAreTestedTogether() {
    JsonNode result = Plans.result(plan("common-effect", "length", "begun"));
    assertErrors(result, 1e-11, 0.390222647721, 0.080306660393, 0.082067068399);
    assertDegrees(result, 1e-10, 2.714400431104, 2.743368789707, 3.855590298151);
    assertEquals(0.32568062038320633, coefficient(result, 1).get("pValue").asDouble(), 1e-11);
    JsonNode test = result.at("/robust/moderatorTest");
    assertEquals(0.6400571783382585, test.get("statistic").asDouble(), 1e-10);
    assertEquals(2, test.at("/degreesOfFreedom/0").asDouble());
    assertEquals(2.6683650724284065, test.at("/degreesOfFreedom/1").asDouble(), 1e-10);
    assertEquals(0.5928470121967783, test.get("pValue").asDouble(), 1e-11);
    assertTrue(Plans.warnings(result).contains("few-clusters"));
  }

  @Test
  void theSimpleSandwichesStayAndSayThatTheyErrTooOften() {
    ObjectNode plan = plan("common-effect", "length", "begun");
    JsonNode corrected = Plans.result(plan.put("robustVariance", "cr1"));
    assertErrors(corrected, 1e-11, 0.43135828878, 0.089649916727, 0.095595235484);
    assertDegrees(corrected, 0, 3, 3, 3);
    assertTrue(Plans.warnings(corrected).contains("error-rate-not-held"));
    JsonNode plain = Plans.result(plan.put("robustVariance", "cr0"));
    assertErrors(plain, 1e-11, 0.305016371117, 0.063392064051, 0.06759603926);
    assertTrue(Plans.warnings(plain).contains("error-rate-not-held"));
  }

  @Test
  void rowsThatShareTheirClustersDeviationAreAdjustedByTheirCovariance() {
    ObjectNode plan = plan("three-level", "length").put("robustVariance", "cr2");
    JsonNode result = Plans.result(plan);
    // The general search behind these ends some seven digits short of the top.
    assertErrors(result, 1e-7, 0.285455886176, 0.086660344279);
    assertDegrees(result, 1e-5, 4.229556361377, 2.625415964861);
    assertErrors(
        Plans.result(plan.put("robustVariance", "cr1")), 1e-7, 0.319480209429, 0.094637967495);
  }

  @Test
  void clustersWhoseMeansAreAllAlikeHaveNoErrorOfRoundingForAStandardError() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 8; i++) {
      Plans.row(rows, "effect", i % 2 == 0 ? 0.1 : 0.7, "variance", 0.05);
      ((ObjectNode) rows.get(i)).put("team", "T" + i / 2);
    }
    JsonNode result = Plans.result(Plans.on(rows, "measure", "reported-effect", "cluster", "team"));
    assertFalse(result.has("robust"));
    assertTrue(Plans.warnings(result).contains("zero-width-interval"));
  }
}
