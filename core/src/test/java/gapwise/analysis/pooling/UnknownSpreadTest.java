package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits for a further study that do not take the spread as known, of random effects and of exact
 * likelihoods. Counts by SciPy's quadrature: core/src/test/reference/unknown_spread.py, whose own
 * error is about 1e-5 since it ends at a standard deviation of 3000.
 */
class UnknownSpreadTest {
  private static final double[] EFFECTS = {0.1, 0.5, 0.9, 0.2, 1.2, 0.8, 0.7};
  private static final double[] ALIKE = {0.6, 0.5, 0.7, 0.55, 0.62, 0.58, 0.6};
  private static final double[] ERRORS = {0.2, 0.25, 0.3, 0.22, 0.35, 0.28, 0.3};
  private static final String WORD = "prediction-takes-spread-as-known";

  private static ObjectNode effects(double[] effects, int studies) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < studies; i++) {
      Plans.row(rows, "effect", effects[i], "standardError", ERRORS[i]);
      ((ObjectNode) rows.get(i)).put("group", i % 2 == 0 ? "a" : "b");
    }
    return Plans.on(rows, "measure", "reported-effect", "predictionInterval", "unknown-spread");
  }

  private static ObjectNode flat(ObjectNode plan) {
    ObjectNode flat = plan.deepCopy().put("model", "bayesian");
    flat.remove("predictionInterval");
    flat.putObject("prior").put("mean", "flat").put("tau", "flat");
    return flat;
  }

  private static ObjectNode shares(int... counts) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < counts.length; i += 2) {
      Plans.row(rows, "events", counts[i], "total", counts[i + 1]);
    }
    return Plans.on(
        rows,
        "measure",
        "proportion",
        "model",
        "exact-likelihood",
        "predictionInterval",
        "unknown-spread");
  }

  private static void limits(double lower, double upper, JsonNode summary, double within) {
    assertEquals(lower, summary.get("predictionLower").asDouble(), within);
    assertEquals(upper, summary.get("predictionUpper").asDouble(), within);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 7})
  void effectsAreThePosteriorWithEveryTauAlike(int studies) {
    for (double[] drawn : new double[][] {EFFECTS, ALIKE}) {
      ObjectNode plan = effects(drawn, studies);
      JsonNode expected = Plans.result(flat(plan)).at("/bayesian/predictive");
      double lower = expected.get("lower").asDouble();
      double upper = expected.get("upper").asDouble();
      for (String estimator : List.of("restricted-maximum-likelihood", "dersimonian-laird")) {
        JsonNode summary = Plans.result(plan.put("betweenStudyVariance", estimator)).get("summary");
        limits(lower, upper, summary, 1e-6 * (upper - lower));
      }
    }
  }

  /** Groups that each have their own tau are posteriors of their own. */
  @Test
  void groupsApartAreThePosteriorsOfTheirStudies() {
    ObjectNode plan =
        effects(EFFECTS, 7).put("subgroup", "group").put("subgroupVariance", "separate");
    JsonNode result = Plans.result(plan);
    JsonNode posteriors = Plans.result(flat(plan).without("subgroupVariance"));
    for (int i = 0; i < 2; i++) {
      JsonNode expected = posteriors.at("/subgroups/" + i + "/bayesian/predictive");
      limits(
          expected.get("lower").asDouble(),
          expected.get("upper").asDouble(),
          result.at("/subgroups/" + i + "/summary"),
          1e-5);
    }
  }

  /**
   * Groups that share tau by a trapezium sum over 100,000 values of it up to 2,000, by the text
   * book: weights 1/(v + tau^2), the restricted likelihood of two means.
   */
  @Test
  void groupsThatShareTauAreWeighedByTheLikelihoodOfAllTheirMeans() {
    JsonNode result =
        Plans.result(
            effects(EFFECTS, 7).put("subgroup", "group").put("subgroupVariance", "common"));
    double upper = result.at("/subgroups/0/summary/predictionUpper").asDouble();
    double mass = 0;
    double above = 0;
    int steps = 100_000;
    for (int s = 0; s <= steps; s++) {
      // Steps grow with tau.
      double u = -6 + s * (Math.log(2000) + 6) / steps;
      double tau = Math.exp(u);
      double log = u;
      double mean = 0;
      double variance = 0;
      for (int group = 1; group >= 0; group--) {
        double weights = 0;
        double sum = 0;
        for (int i = group; i < 7; i += 2) {
          double weight = 1 / (ERRORS[i] * ERRORS[i] + tau * tau);
          weights += weight;
          sum += weight * EFFECTS[i];
        }
        mean = sum / weights;
        variance = 1 / weights;
        log -= Math.log(weights) / 2;
        for (int i = group; i < 7; i += 2) {
          double weight = 1 / (ERRORS[i] * ERRORS[i] + tau * tau);
          log += (Math.log(weight) - weight * (EFFECTS[i] - mean) * (EFFECTS[i] - mean)) / 2;
        }
      }
      double z = (upper - mean) / Math.sqrt(variance + tau * tau);
      mass += Math.exp(log);
      above += Math.exp(log) * NormalDistribution.of(0, 1).survivalProbability(z);
    }
    assertEquals(0.025, above / mass, 2e-5);
  }

  @Test
  void sharesAreThoseOfTheIntegratedLikelihoodOnBothScales() {
    JsonNode alike = Plans.result(shares(17, 20, 8, 9, 31, 34, 15, 18, 26, 30)).get("summary");
    limits(0.38645866680801955, 3.674317264845262, alike, 1e-5);
    JsonNode shown = alike.get("shown");
    assertEquals(1 / (1 + Math.exp(-0.386459)), shown.get("predictionLower").asDouble(), 1e-5);
    assertEquals(1 / (1 + Math.exp(-3.674317)), shown.get("predictionUpper").asDouble(), 1e-5);
    JsonNode full =
        Plans.result(shares(12, 12, 17, 20, 8, 9, 31, 34, 15, 18, 9, 9, 22, 30)).get("summary");
    limits(-0.5977443627198271, 5.86840054244162, full, 1e-5);
  }

  @Test
  void ratesAndOddsRatiosAreThoseOfTheIntegratedLikelihood() {
    ArrayNode rates = Plans.rows();
    int[] events = {4, 9, 0, 3, 12, 7};
    int[] times = {310, 420, 95, 180, 260, 505};
    for (int i = 0; i < events.length; i++) {
      Plans.row(rates, "events", events[i], "personTime", times[i]);
    }
    ObjectNode plan =
        Plans.on(
            rates,
            "measure",
            "incidence-rate",
            "model",
            "exact-likelihood",
            "predictionInterval",
            "unknown-spread");
    limits(-6.77667277, -1.84899334, Plans.result(plan).get("summary"), 1e-5);
    limits(-5.7319477, 2.8603919, Plans.result(odds()).get("summary"), 1e-5);
  }

  private static ObjectNode odds() {
    ArrayNode rows = Plans.rows();
    int[][] tables = {
      {6, 40, 14, 42}, {7, 35, 5, 34}, {9, 51, 20, 49}, {0, 22, 4, 25}, {5, 30, 11, 31}
    };
    for (int[] one : tables) {
      Plans.row(
          rows,
          "intervention.events",
          one[0],
          "intervention.total",
          one[1],
          "comparator.events",
          one[2],
          "comparator.total",
          one[3]);
    }
    return Plans.on(
        rows,
        "measure",
        "odds-ratio",
        "model",
        "exact-likelihood",
        "predictionInterval",
        "unknown-spread");
  }

  /** With intercepts the limits are wider than the mean's and hold about what the margins give. */
  @ParameterizedTest
  @CsvSource({"equal", "larger-with-intervention"})
  void theUnconditionalLikelihoodHasThemToo(String spread) {
    JsonNode summary =
        Plans.result(odds().put("likelihood", "unconditional").put("armSpread", spread))
            .get("summary");
    assertTrue(summary.get("predictionLower").asDouble() < summary.get("lower").asDouble() - 1);
    assertTrue(summary.get("predictionUpper").asDouble() > summary.get("upper").asDouble() + 1);
  }

  /** Where tau is estimated as 0, limits that take it as known are near those of the mean. */
  @Test
  void whereTauIsZeroOnlyTheOtherLimitsSayThatTheyTakeItAsKnown() {
    ObjectNode plan = shares(17, 20, 8, 9, 31, 34, 15, 18, 26, 30);
    JsonNode unknown = Plans.result(plan);
    assertEquals(0, unknown.at("/heterogeneity/tauSquared").asDouble());
    assertFalse(Plans.warnings(unknown).contains(WORD));
    for (String known : List.of("t-k-minus-2", "t-k-minus-1", "normal")) {
      JsonNode result = Plans.result(plan.deepCopy().put("predictionInterval", known));
      assertTrue(Plans.warnings(result).contains(WORD), known);
      assertTrue(width(result) < 0.8 * width(unknown), known);
    }
    JsonNode effects = Plans.result(effects(ALIKE, 7).without("predictionInterval"));
    assertTrue(Plans.warnings(effects).contains(WORD));
    assertTrue(width(effects) < 0.8 * width(Plans.result(effects(ALIKE, 7))));
    JsonNode differing = Plans.result(effects(EFFECTS, 7).without("predictionInterval"));
    assertFalse(Plans.warnings(differing).contains(WORD));
    JsonNode common = Plans.result(effects(ALIKE, 7).put("model", "common-effect"));
    assertFalse(Plans.warnings(common).contains(WORD));
    assertTrue(Plans.warnings(common).contains("setting-not-used"));
  }

  private static double width(JsonNode result) {
    JsonNode summary = result.get("summary");
    return summary.get("predictionUpper").asDouble() - summary.get("predictionLower").asDouble();
  }

  @Test
  void groupsAndModeratorsSayItToo() {
    JsonNode groups =
        Plans.result(
            effects(ALIKE, 7).put("predictionInterval", "t-k-minus-2").put("subgroup", "group"));
    assertEquals(3, Plans.warnings(groups).stream().filter(WORD::equals).count());
    ObjectNode moderated = effects(ALIKE, 7).put("predictionInterval", "t-k-minus-2");
    for (int i = 0; i < 7; i++) {
      ((ObjectNode) moderated.at("/source/rows/" + i)).put("length", 3 + i * i % 5);
    }
    moderated.putArray("moderators").add("length");
    moderated.putArray("predictions").addObject().put("length", 4);
    assertTrue(Plans.warnings(Plans.result(moderated)).contains(WORD));
    moderated.put("predictionInterval", "unknown-spread");
    assertEquals(List.of("predictionInterval interval-not-for-model"), Plans.problems(moderated));
  }

  @Test
  void tooFewStudiesAreSaidSo() {
    for (ObjectNode plan : List.of(effects(EFFECTS, 2), shares(17, 20, 8, 9))) {
      JsonNode result = Plans.result(plan);
      assertFalse(result.get("summary").has("predictionLower"));
      assertTrue(Plans.warnings(result).contains("too-few-studies"));
    }
    // Two with some events but not all say nothing of how far studies may differ.
    JsonNode full = Plans.result(shares(17, 20, 8, 9, 12, 12, 5, 5));
    assertFalse(full.get("summary").has("predictionLower"));
    assertTrue(Plans.warnings(full).contains("too-few-studies"));
    JsonNode three = Plans.result(shares(17, 20, 8, 9, 31, 34)).at("/summary/shown");
    assertTrue(three.get("predictionLower").asDouble() < 0.01);
    assertTrue(three.get("predictionUpper").asDouble() > 0.99);
  }

  @Test
  void whereEverybodyHadTheEventNothingIsPooled() {
    JsonNode result = Plans.result(shares(12, 12, 9, 9, 20, 20, 5, 5));
    assertTrue(result.at("/summary/predictionLower").isMissingNode(), result.toString());
    assertTrue(Plans.warnings(result).contains("all-events"));
  }

  /** The place of a limit is the share that the limit leaves below. */
  @Test
  void placesAreCountedInTheSameDistribution() {
    for (ObjectNode plan :
        List.of(effects(EFFECTS, 7), shares(17, 20, 8, 9, 31, 34, 10, 18, 26, 30))) {
      double limit = Plans.result(plan).at("/summary/shown/predictionUpper").asDouble();
      plan.putArray("places").add(limit);
      JsonNode place = Plans.result(plan).at("/places/0");
      assertTrue(place.toString().contains("0.97"), place.toString());
    }
  }

  /** Where the mean is normal at each tau, its standard error is that of the weights. */
  @Test
  void theOtherStandardErrorHasNoBearing() {
    JsonNode result =
        Plans.result(effects(EFFECTS, 7).put("predictionStandardError", "hartung-knapp"));
    assertTrue(Plans.warnings(result).contains("setting-not-used"));
    assertFalse(Plans.result(effects(EFFECTS, 7)).get("plan").has("predictionStandardError"));
  }
}
