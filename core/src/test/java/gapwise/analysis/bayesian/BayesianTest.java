package gapwise.analysis.bayesian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What must hold for the Bayesian model whatever the data, and what it says at the edges. */
class BayesianTest {
  private static final double[][] SERIES = {
    {0.3, 0.04}, {-0.2, 0.09}, {0.9, 0.02}, {0.4, 0.25}, {0.1, 0.06}
  };

  private static ObjectNode plan(double[][] studies, String prior) {
    ArrayNode rows = Plans.rows();
    for (double[] study : studies) {
      Plans.row(rows, "effect", study[0], "variance", study[1]);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "model", "bayesian");
    plan.set("prior", json(prior));
    return plan;
  }

  private static JsonNode json(String text) {
    try {
      return new com.fasterxml.jackson.databind.ObjectMapper().readTree(text.replace('\'', '"'));
    } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  private static String tau(String kind, double scale) {
    return "{'mean':'flat','tau':{'" + kind + "':" + scale + "}}";
  }

  private static JsonNode posterior(double[][] studies, String prior) {
    JsonNode result = Plans.result(plan(studies, prior));
    assertTrue(result.has("bayesian"), result::toString);
    return result.get("bayesian");
  }

  private static double[][] moved(double shift, double factor) {
    double[][] other = new double[SERIES.length][];
    for (int i = 0; i < other.length; i++) {
      other[i] = new double[] {shift + factor * SERIES[i][0], factor * factor * SERIES[i][1]};
    }
    return other;
  }

  @Test
  void underAFlatMeanAConstantAddedToAllEffectsMovesTheMeanAndNothingElse() {
    JsonNode one = posterior(SERIES, tau("halfNormal", 0.5));
    JsonNode other = posterior(moved(1000, 1), tau("halfNormal", 0.5));
    for (String part : List.of("mean", "predictive")) {
      for (String field : List.of("mean", "median", "lower", "upper", "shortestLower")) {
        assertEquals(
            one.at("/" + part + "/" + field).asDouble() + 1000,
            other.at("/" + part + "/" + field).asDouble(),
            1e-8);
      }
      assertEquals(one.at("/mean/sd").asDouble(), other.at("/mean/sd").asDouble(), 1e-11);
    }
    assertEquals(one.at("/tau/median").asDouble(), other.at("/tau/median").asDouble(), 1e-11);
  }

  @Test
  void scalingDataAndPriorScalesThePosterior() {
    JsonNode one = posterior(SERIES, tau("halfCauchy", 0.5));
    for (double factor : new double[] {1e-6, 12, 1e6}) {
      JsonNode other = posterior(moved(0, factor), tau("halfCauchy", 0.5 * factor));
      for (String part : List.of("mean", "tau", "predictive")) {
        for (String field : List.of("mean", "median", "sd", "lower", "upper", "shortestUpper")) {
          double expected = factor * one.at("/" + part + "/" + field).asDouble();
          assertEquals(
              expected, other.at("/" + part + "/" + field).asDouble(), 2e-8 * Math.abs(expected));
        }
      }
    }
  }

  @Test
  void mirroredEffectsMirrorThePosterior() {
    JsonNode one = posterior(SERIES, tau("halfNormal", 0.5));
    JsonNode other = posterior(moved(0, -1), tau("halfNormal", 0.5));
    assertEquals(one.at("/mean/lower").asDouble(), -other.at("/mean/upper").asDouble(), 1e-11);
    assertEquals(
        one.at("/predictive/shortestUpper").asDouble(),
        -other.at("/predictive/shortestLower").asDouble(),
        1e-7);
    assertEquals(
        one.at("/mean/probabilityBelowZero").asDouble(),
        1 - other.at("/mean/probabilityBelowZero").asDouble(),
        1e-12);
  }

  @Test
  void theOrderOfStudiesDoesNotMatter() {
    double[][] turned = {SERIES[3], SERIES[0], SERIES[4], SERIES[2], SERIES[1]};
    JsonNode one = posterior(SERIES, tau("halfNormal", 0.5));
    JsonNode other = posterior(turned, tau("halfNormal", 0.5));
    assertEquals(one.at("/mean/upper").asDouble(), other.at("/mean/upper").asDouble(), 1e-11);
    assertEquals(
        one.at("/studies/3/mean").asDouble(), other.at("/studies/0/mean").asDouble(), 1e-11);
  }

  @Test
  void withManyStudiesAndAWidePriorItComesToTheLikelihood() {
    Random random = new Random(3);
    double[][] many = new double[2000][];
    for (int i = 0; i < many.length; i++) {
      double variance = 0.02 + 0.1 * random.nextDouble();
      many[i] = new double[] {0.3 + random.nextGaussian() * Math.sqrt(variance + 0.04), variance};
    }
    ObjectNode plan = plan(many, tau("halfCauchy", 100));
    JsonNode bayes = Plans.result(plan);
    plan.put("model", "random-effects").put("interval", "normal").remove("prior");
    JsonNode likelihood = Plans.result(plan);
    double error = likelihood.at("/summary/standardError").asDouble();
    for (String limit : List.of("lower", "upper")) {
      assertEquals(
          likelihood.at("/summary/" + limit).asDouble(),
          bayes.at("/bayesian/mean/" + limit).asDouble(),
          0.02 * error);
    }
    assertEquals(
        likelihood.at("/heterogeneity/tau").asDouble(),
        bayes.at("/bayesian/tau/median").asDouble(),
        0.002);
  }

  @Test
  void aPriorThatHoldsStudiesTogetherComesToTheCommonEffect() {
    // As tau goes to 0: weights 25, 11.11.., 50, 4, 16.66.. sum to 106.777.., mean by hand.
    JsonNode bayes = posterior(SERIES, tau("halfNormal", 1e-9));
    double mean = (25 * 0.3 - 0.2 / 0.09 + 50 * 0.9 + 4 * 0.4 + 0.1 / 0.06);
    double sum = 25 + 1 / 0.09 + 50 + 4 + 1 / 0.06;
    assertEquals(mean / sum, bayes.at("/mean/mean").asDouble(), 1e-12);
    assertEquals(1 / Math.sqrt(sum), bayes.at("/mean/sd").asDouble(), 1e-12);
  }

  @Test
  void oneStudyWithAKnownPriorHasItsClosedForm() {
    // tau held to 1 (to 1e-6): y ~ N(mean, 0.3^2 + 1), mean ~ N(2, 0.7^2): precision-weighted.
    JsonNode bayes =
        posterior(
            new double[][] {{0.4, 0.09}},
            "{'mean':{'normal':[2,0.7]},'tau':{'uniform':[1,1.000001]}}");
    double own = 1 / 1.09;
    double prior = 1 / 0.49;
    assertEquals((own * 0.4 + prior * 2) / (own + prior), bayes.at("/mean/mean").asDouble(), 1e-5);
    assertEquals(1 / Math.sqrt(own + prior), bayes.at("/mean/sd").asDouble(), 1e-5);
    assertTrue(bayes.at("/tau/lower").asDouble() >= 1, bayes::toString);
  }

  @Test
  void aProbabilityStatementAgreesWithTheLimits() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 17, "total", 18);
    Plans.row(rows, "events", 22, "total", 25);
    Plans.row(rows, "events", 9, "total", 9);
    ObjectNode plan = Plans.on(rows, "model", "bayesian");
    JsonNode shown = Plans.result(plan).at("/bayesian/mean/shown");
    plan.putArray("probabilities")
        .add(JsonNodeFactory.instance.objectNode().put("above", shown.get("upper").asDouble()))
        .add(JsonNodeFactory.instance.objectNode().put("below", shown.get("upper").asDouble()));
    JsonNode told = Plans.result(plan).at("/bayesian/probabilities");
    assertEquals(0.025, told.at("/0/mean").asDouble(), 1e-9);
    assertEquals(0.975, told.at("/1/mean").asDouble(), 1e-9);
    double predictive = told.at("/0/predictive").asDouble();
    assertTrue(predictive > 0.025 && predictive < 0.5, told::toString);
  }

  @Test
  void whatNoPriorAndNoProbabilityCanBeIsRefused() {
    ObjectNode plan = plan(SERIES, "{'mean':{'normal':[0,0]},'tau':{'uniform':[2,1]}}");
    plan.putArray("priorSensitivity").add(json("{'uniform':[1,1]}"));
    assertEquals(
        List.of(
            "prior.mean.normal[1] out-of-range",
            "prior.tau.uniform out-of-range",
            "priorSensitivity[0].uniform out-of-range"),
        Plans.problems(plan));
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 17, "total", 18);
    ObjectNode share = Plans.on(rows, "model", "bayesian");
    share.putArray("probabilities").add(json("{'above':90}"));
    assertEquals(List.of("probabilities[0].above out-of-range"), Plans.problems(share));
    share.putArray("probabilities").add(json("{'above':0.9,'below':0.95}"));
    assertEquals(List.of("probabilities[0] out-of-range"), Plans.problems(share));
  }

  @Test
  void otherPriorsStandBesideAndTheSamePriorGivesTheSame() {
    ObjectNode plan = plan(SERIES, tau("halfNormal", 0.5));
    plan.set("priorSensitivity", json("[{'halfNormal':0.5},{'halfCauchy':0.5},'flat']"));
    JsonNode bayes = Plans.result(plan).get("bayesian");
    assertEquals(bayes.at("/mean/lower"), bayes.at("/priorSensitivity/0/lower"));
    assertTrue(
        bayes.at("/priorSensitivity/1/lower").asDouble() < bayes.at("/mean/lower").asDouble());
    assertEquals("flat", bayes.at("/priorSensitivity/2/tau").asText());
    ObjectNode two = plan(new double[][] {SERIES[0], SERIES[1]}, tau("halfNormal", 0.5));
    two.set("priorSensitivity", json("['flat']"));
    JsonNode result = Plans.result(two);
    assertFalse(result.at("/bayesian/priorSensitivity/0").has("median"));
    assertTrue(Plans.warnings(result).contains("improper-posterior"));
  }

  @Test
  void momentsThatAreInfiniteAreLeftOutAndMediansStand() {
    double[][] two = {SERIES[0], SERIES[1]};
    JsonNode result = Plans.result(plan(two, tau("halfCauchy", 0.5)));
    assertTrue(Plans.warnings(result).contains("infinite-moment"));
    assertFalse(result.has("summary"));
    assertTrue(result.at("/bayesian/tau").has("mean"));
    assertFalse(result.at("/bayesian/tau").has("sd"));
    assertFalse(result.at("/bayesian/predictive").has("sd"));
    assertTrue(result.at("/bayesian/predictive/upper").isNumber());
    JsonNode normal = Plans.result(plan(two, "{'mean':{'normal':[0,4]},'tau':{'halfCauchy':0.5}}"));
    assertTrue(normal.at("/bayesian/tau").has("sd"), "a normal mean adds one power to the tail");
  }

  @Test
  void extremeDataGiveAPosteriorOrAWarning() {
    double[][][] cases = {
      {{0, 1e-12}, {0, 1e12}},
      {{5, 1e-12}, {-5, 1e-12}, {5, 1e12}},
      {{1, 0.1}, {1, 0.1}, {1, 0.1}},
      {{1e8, 1}, {-1e8, 1}},
      {{1e8, 1e-12}, {1e8 + 1, 1e-12}, {1e8 + 2, 1e12}},
      {{1e150, 1}, {0, 1}},
      {{0, 0}, {1, 1}},
    };
    for (double[][] studies : cases) {
      for (String prior :
          List.of(
              tau("halfNormal", 0.5),
              tau("halfCauchy", 0.5),
              tau("halfNormal", 1e300),
              "{'mean':'flat','tau':'flat'}",
              "{'mean':{'normal':[0,4]},'tau':{'uniform':[0,5]}}",
              "{'mean':{'normal':[-7,0.001]},'tau':{'uniform':[3,4]}}")) {
        JsonNode result = Plans.result(plan(studies, prior));
        if (!result.has("bayesian")) {
          assertTrue(result.get("warnings").size() > 0, result::toString);
          continue;
        }
        for (String part : List.of("mean", "tau", "predictive")) {
          JsonNode told = result.at("/bayesian/" + part);
          if (told.isMissingNode()) {
            // A study without variance is left out, which may leave one and a flat mean.
            assertTrue(Plans.warnings(result).contains("posterior-is-prior"), result::toString);
            continue;
          }
          double median = told.get("median").asDouble();
          double rounding = 1e-14 * Math.abs(median);
          assertTrue(told.get("lower").asDouble() <= median + rounding, result::toString);
          assertTrue(told.get("upper").asDouble() >= median - rounding, result::toString);
          double width = told.get("upper").asDouble() - told.get("lower").asDouble();
          double shortest =
              told.get("shortestUpper").asDouble() - told.get("shortestLower").asDouble();
          assertTrue(shortest <= width * (1 + 1e-6) + rounding, prior + result);
        }
      }
    }
  }

  @Test
  void tenThousandStudiesAreWithinReach() {
    Random random = new Random(5);
    double[][] many = new double[10_000][];
    for (int i = 0; i < many.length; i++) {
      double variance = 0.05 + random.nextDouble();
      many[i] = new double[] {random.nextGaussian() * Math.sqrt(1 + variance), variance};
    }
    JsonNode bayes = posterior(many, tau("halfNormal", 0.5));
    assertEquals(10_000, bayes.get("studies").size());
    assertEquals(1, bayes.at("/tau/median").asDouble(), 0.05);
  }

  @Test
  void subgroupsCumulativeOrderAndLeavingOutUseTheSamePosterior() {
    ObjectNode plan = plan(SERIES, tau("halfNormal", 0.5));
    plan.put("influence", true).put("cumulativeBy", "study").put("subgroup", "part");
    plan.at("/source/rows").forEach(row -> ((ObjectNode) row).put("part", "all"));
    JsonNode result = Plans.result(plan);
    double median = result.at("/bayesian/mean/median").asDouble();
    assertEquals(median, result.at("/summary/estimate").asDouble());
    assertEquals(median, result.at("/cumulative/4/estimate").asDouble());
    assertEquals(median, result.at("/subgroups/0/summary/estimate").asDouble());
    double[][] four = {SERIES[0], SERIES[1], SERIES[2], SERIES[3]};
    assertEquals(
        posterior(four, tau("halfNormal", 0.5)).at("/mean/median").asDouble(),
        result.at("/influence/leaveOneOut/4/estimate").asDouble());
  }
}
