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

/** Studies that agree more than their own errors allow: the Hartung-Knapp factor is near 0. */
class IntervalNarrowerThanTheModelTest {
  private static final double[] EFFECTS = {0.52, 0.5, 0.51, 0.49};
  private static final double[] VARIANCES = {0.04, 0.09, 0.06, 0.11};

  private static ArrayNode alike() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < EFFECTS.length; i++) {
      Plans.row(rows, "effect", EFFECTS[i], "variance", VARIANCES[i], "kind", 1 + i % 2);
    }
    return rows;
  }

  /** The standard error of a common effect, 1/root(sum 1/v). */
  private static double ofModel() {
    double sum = 0;
    for (double variance : VARIANCES) {
      sum += 1 / variance;
    }
    return 1 / Math.sqrt(sum);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "restricted-maximum-likelihood",
        "maximum-likelihood",
        "dersimonian-laird",
        "two-step-dersimonian-laird",
        "paule-mandel",
        "empirical-bayes",
        "hunter-schmidt",
        "hedges"
      })
  void theDefaultIsNeverNarrowerThanTheModels(String estimator) {
    JsonNode usual = Plans.ofEffects(alike(), "betweenStudyVariance", estimator);
    assertEquals("hartung-knapp-never-narrower", usual.at("/plan/interval").asText());
    assertEquals(ofModel(), usual.at("/summary/standardError").asDouble(), 1e-14);
    // t on 3 degrees of freedom of 97.5 %, published tables.
    assertEquals(
        3.182446 * 2 * ofModel(),
        usual.at("/summary/upper").asDouble() - usual.at("/summary/lower").asDouble(),
        1e-6);
    assertFalse(Plans.warnings(usual).contains("interval-narrower-than-model"));
  }

  @Test
  void thePlainOneStandsOnlyWhereAskedAndWithAWarning() {
    JsonNode plain = Plans.ofEffects(alike(), "interval", "hartung-knapp");
    assertTrue(plain.at("/summary/standardError").asDouble() < ofModel() / 10);
    assertTrue(Plans.warnings(plain).contains("interval-narrower-than-model"));
    JsonNode groups = Plans.ofEffects(alike(), "interval", "hartung-knapp", "subgroup", "kind");
    assertTrue(
        groups
            .get("warnings")
            .valueStream()
            .map(one -> one.get("message").asText())
            .anyMatch(told -> told.startsWith("group '1'") && told.contains("narrower")));
  }

  @Test
  void studiesThatDifferHaveNoneOfIt() {
    ArrayNode apart = Plans.rows();
    for (int i = 0; i < 5; i++) {
      Plans.row(apart, "effect", i * i / 5.0, "variance", 0.03);
    }
    JsonNode wide = Plans.ofEffects(apart, "interval", "hartung-knapp");
    assertFalse(Plans.warnings(wide).contains("interval-narrower-than-model"));
  }
}
