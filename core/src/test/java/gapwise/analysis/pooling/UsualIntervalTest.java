package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Intervals of a pooled mean: which is the usual one, and which stand with a caution. */
class UsualIntervalTest {
  /** Three effects that agree by chance: the Hartung-Knapp factor is 0.0014. */
  private static ArrayNode alike() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 0.3, "variance", 0.05);
    Plans.row(rows, "effect", 0.31, "variance", 0.08);
    Plans.row(rows, "effect", 0.29, "variance", 0.06);
    return rows;
  }

  private static ArrayNode apart() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 0, "variance", 0.0001);
    Plans.row(rows, "effect", 0.01, "variance", 0.0001);
    Plans.row(rows, "effect", 3, "variance", 4);
    Plans.row(rows, "effect", 4, "variance", 4);
    Plans.row(rows, "effect", 5, "variance", 4);
    return rows;
  }

  private static JsonNode of(ArrayNode rows, String... more) {
    String[] fields = new String[more.length + 2];
    fields[0] = "measure";
    fields[1] = "reported-effect";
    System.arraycopy(more, 0, fields, 2, more.length);
    return Plans.result(Plans.on(rows, fields));
  }

  @Test
  void isNeverNarrowerThanTheModels() {
    // The common-effect standard error 1/root(1/0.05 + 1/0.08 + 1/0.06), by hand 0.142615.
    JsonNode usual = of(alike());
    assertEquals("hartung-knapp-never-narrower", usual.at("/plan/interval").asText());
    assertEquals(
        1 / Math.sqrt(20 + 12.5 + 1 / 0.06), usual.at("/summary/standardError").asDouble(), 1e-14);
    assertFalse(Plans.warnings(usual).contains("interval-narrower-than-model"));
  }

  @Test
  void plainHartungKnappStandsWithAWarningWhereItIsNarrower() {
    JsonNode plain = of(alike(), "interval", "hartung-knapp");
    assertTrue(plain.at("/summary/standardError").asDouble() < 0.006);
    assertTrue(Plans.warnings(plain).contains("interval-narrower-than-model"));
    JsonNode wide = of(apart(), "interval", "hartung-knapp");
    assertFalse(Plans.warnings(wide).contains("interval-narrower-than-model"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"restricted-maximum-likelihood", "paule-mandel", "sidik-jonkman", "hedges"})
  void profileLimitsStandAboutTheMeanOfTheirOwnLikelihood(String estimator) {
    JsonNode ofLikelihood =
        of(apart(), "interval", "profile-likelihood", "betweenStudyVariance", "maximum-likelihood");
    JsonNode profile =
        of(apart(), "interval", "profile-likelihood", "betweenStudyVariance", estimator);
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
        of(apart(), "interval", "normal", "betweenStudyVariance", estimator)
            .at("/summary/estimate")
            .asDouble();
    assertEquals(
        Math.abs(named - estimate) > 1e-6,
        Plans.warnings(profile).contains("estimate-by-maximum-likelihood"));
    assertFalse(Plans.warnings(ofLikelihood).contains("estimate-by-maximum-likelihood"));
  }

  @Test
  void iSquaredHasTheLimitsOfTauSquaredBesideTheSameTypicalVariance() {
    // Higgins and Thompson 2002: I squared = t/(t + s); 19 effects would be the published case,
    // here
    // s follows from the estimate, and both limits from those of tau squared.
    JsonNode result = of(apart(), "betweenStudyVariance", "paule-mandel");
    JsonNode h = result.get("heterogeneity");
    double share = h.get("iSquaredPercent").asDouble() / 100;
    double typical = h.get("tauSquared").asDouble() * (1 - share) / share;
    for (String end : new String[] {"Lower", "Upper"}) {
      double limit = h.get("tauSquared" + end).asDouble();
      assertEquals(
          100 * limit / (limit + typical), h.get("iSquaredPercent" + end).asDouble(), 1e-9, end);
    }
    assertTrue(Plans.warnings(result).contains("i-squared-of-few-studies"));
  }

  @Test
  void oneStudyKeepsItsOwnEffectWhateverIntervalIsAsked() {
    ArrayNode one = Plans.rows();
    Plans.row(one, "effect", 0.4, "variance", 0.09);
    for (String interval :
        new String[] {
          "hartung-knapp", "hartung-knapp-never-narrower", "normal", "profile-likelihood"
        }) {
      JsonNode result = of(one.deepCopy(), "interval", interval);
      assertEquals(0.4, result.at("/summary/estimate").asDouble(), interval);
      assertEquals(
          0.4 - 0.3 * 1.959963984540054, result.at("/summary/lower").asDouble(), 1e-14, interval);
      assertTrue(Plans.warnings(result).contains("single-study"), interval);
    }
  }
}
