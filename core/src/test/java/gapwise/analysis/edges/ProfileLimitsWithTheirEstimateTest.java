package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Profile likelihood limits stand about the mean of their own likelihood, whatever estimator is
 * named.
 */
class ProfileLimitsWithTheirEstimateTest {
  private static ArrayNode apart() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 0.02, "variance", 0.0002);
    Plans.row(rows, "effect", 0.03, "variance", 0.0001);
    Plans.row(rows, "effect", 2.5, "variance", 3);
    Plans.row(rows, "effect", 4.5, "variance", 5);
    Plans.row(rows, "effect", 3.5, "variance", 4);
    return rows;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"restricted-maximum-likelihood", "paule-mandel", "sidik-jonkman", "hedges"})
  void profileLimitsStandAboutTheMeanOfTheirOwnLikelihood(String estimator) {
    JsonNode ofLikelihood =
        Plans.ofEffects(
            apart(),
            "interval",
            "profile-likelihood",
            "betweenStudyVariance",
            "maximum-likelihood");
    JsonNode profile =
        Plans.ofEffects(
            apart(), "interval", "profile-likelihood", "betweenStudyVariance", estimator);
    for (String field : new String[] {"estimate", "standardError", "lower", "upper"}) {
      assertEquals(
          ofLikelihood.at("/summary/" + field).asDouble(),
          profile.at("/summary/" + field).asDouble(),
          1e-12,
          field);
    }
    double estimate = profile.at("/summary/estimate").asDouble();
    assertTrue(profile.at("/summary/lower").asDouble() < estimate);
    assertTrue(profile.at("/summary/upper").asDouble() > estimate);
    double weighted = 0;
    for (JsonNode study : profile.get("studies")) {
      weighted += study.get("weightPercent").asDouble() / 100 * study.get("effect").asDouble();
    }
    assertEquals(estimate, weighted, 1e-12, "the weights are those of the mean that is shown");
    double named =
        Plans.ofEffects(apart(), "interval", "normal", "betweenStudyVariance", estimator)
            .at("/summary/estimate")
            .asDouble();
    assertEquals(
        Math.abs(named - estimate) > 1e-6,
        Plans.warnings(profile).contains("estimate-by-maximum-likelihood"));
    assertFalse(Plans.warnings(ofLikelihood).contains("estimate-by-maximum-likelihood"));
  }
}
