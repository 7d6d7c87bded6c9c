package gapwise.analysis.clusters;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import gapwise.analysis.testing.PublishedChecks;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must always hold of plans with effects in clusters. */
class ThreeLevelTest {
  private static final List<String> LIKELIHOODS =
      List.of("restricted-maximum-likelihood", "maximum-likelihood");

  private static void row(ArrayNode rows, String team, double effect, double variance) {
    Plans.row(rows, "effect", effect, "variance", variance);
    ((ObjectNode) rows.get(rows.size() - 1)).put("team", team);
  }

  private static ObjectNode plan(ArrayNode rows, String likelihood) {
    return Plans.on(
        rows,
        "measure",
        "reported-effect",
        "model",
        "three-level",
        "cluster",
        "team",
        "betweenStudyVariance",
        likelihood);
  }

  private static JsonNode fit(ArrayNode rows, String likelihood) {
    return Plans.result(plan(rows, likelihood));
  }

  private static double at(JsonNode result, String place) {
    JsonNode found = PublishedChecks.at(result, place);
    assertTrue(found.isNumber(), () -> "no number at " + place + " in " + result);
    return found.asDouble();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void oneRowAClusterIsTheTwoLevelModelAndSaysSo(long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 3 + random.nextInt(8); i++) {
      row(rows, "team " + i, random.nextGaussian(), 0.02 + random.nextDouble());
    }
    for (String likelihood : LIKELIHOODS) {
      JsonNode three = Plans.result(plan(rows, likelihood).put("interval", "normal"));
      JsonNode two =
          Plans.result(
              Plans.on(
                  rows,
                  "measure",
                  "reported-effect",
                  "interval",
                  "normal",
                  "betweenStudyVariance",
                  likelihood));
      for (String place :
          List.of(
              "summary.estimate",
              "summary.standardError",
              "summary.lower",
              "summary.upper",
              "summary.pValue",
              "heterogeneity.tauSquared",
              "heterogeneity.iSquaredPercent",
              "heterogeneity.q",
              "fit.logLikelihood",
              "studies[1].weightPercent")) {
        // Both searches end where a derivative changes sign, which rounding blurs by some 1e-9.
        assertEquals(at(two, place), at(three, place), 1e-7, place);
      }
      assertFalse(three.has("threeLevel"));
      assertTrue(Plans.warnings(three).contains("variances-not-apart"));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void theOrderOfRowsAShiftAndAChangeOfUnitChangeNothingElse(long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    ArrayNode turned = Plans.rows();
    ArrayNode scaled = Plans.rows();
    int k = 6 + random.nextInt(6);
    double[] effects = random.doubles(k, -1, 1).toArray();
    double[] variances = random.doubles(k, 0.02, 0.5).toArray();
    for (int i = 0; i < k; i++) {
      row(rows, "team " + i % 4, effects[i], variances[i]);
      row(turned, "team " + (k - 1 - i) % 4, effects[k - 1 - i], variances[k - 1 - i]);
      row(scaled, "team " + i % 4, 5 + 100 * effects[i], 1e4 * variances[i]);
    }
    for (String likelihood : LIKELIHOODS) {
      JsonNode one = fit(rows, likelihood);
      JsonNode other = fit(turned, likelihood);
      JsonNode larger = fit(scaled, likelihood);
      for (String variance : List.of("betweenVariance", "withinVariance")) {
        double value = at(one, "threeLevel." + variance);
        assertEquals(value, at(other, "threeLevel." + variance), 1e-7);
        assertEquals(value, at(larger, "threeLevel." + variance) / 1e4, 1e-7);
      }
      double estimate = at(one, "summary.estimate");
      assertEquals(estimate, at(other, "summary.estimate"), 1e-7);
      assertEquals(estimate, (at(larger, "summary.estimate") - 5) / 100, 1e-7);
      double error = at(one, "summary.standardError");
      assertEquals(error, at(other, "summary.standardError"), 1e-7);
      assertEquals(error, at(larger, "summary.standardError") / 100, 1e-7);
    }
  }

  @Test
  void effectsCloserThanTheirErrorsAllowGiveBothVariancesAtZeroAndTheCommonEffect() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 8; i++) {
      row(rows, "team " + i / 2, 0.5 + 0.001 * i, 0.1 + 0.01 * i);
    }
    JsonNode common =
        Plans.result(Plans.on(rows, "measure", "reported-effect", "model", "common-effect"));
    for (String likelihood : LIKELIHOODS) {
      JsonNode result = fit(rows, likelihood);
      assertEquals(0, at(result, "threeLevel.betweenVariance"));
      assertEquals(0, at(result, "threeLevel.withinVariance"));
      assertEquals(at(common, "summary.estimate"), at(result, "summary.estimate"), 1e-14);
      assertEquals(at(common, "summary.standardError"), at(result, "summary.standardError"), 1e-14);
      assertTrue(
          Plans.warnings(result)
              .containsAll(
                  List.of("between-study-variance-at-zero", "within-cluster-variance-at-zero")));
    }
  }

  @Test
  void aVarianceWithinAtZeroIsFoundOnItsEdge() {
    // Base R 4.2.2, optim on the likelihood written with dense matrices.
    double[] effects = {0.1, 0.3, 0.7, 0.9, 0.2, 0.25, 1.1};
    double[] variances = {0.04, 0.05, 0.03, 0.06, 0.02, 0.08, 0.05};
    String[] teams = {"A", "A", "B", "B", "C", "C", "D"};
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 7; i++) {
      row(rows, teams[i], effects[i], variances[i]);
    }
    JsonNode result = fit(rows, "restricted-maximum-likelihood");
    assertEquals(0, at(result, "threeLevel.withinVariance"));
    assertEquals(0.1582147205, at(result, "threeLevel.betweenVariance"), 2e-5);
    assertEquals(0.5455907463, at(result, "summary.estimate"), 2e-5);
    assertEquals(0.2146887452, at(result, "summary.standardError"), 2e-5);
    assertEquals(-2.1240405779, at(result, "fit.logLikelihood"), 1e-8);
    assertTrue(result.at("/fit/converged").asBoolean());
    assertTrue(Plans.warnings(result).contains("within-cluster-variance-at-zero"));
  }

  @Test
  void oneClusterTellsNothingOfTheVarianceBetween() {
    ArrayNode rows = Plans.rows();
    row(rows, "A", 0.1, 0.01);
    row(rows, "A", 0.5, 0.02);
    row(rows, "A", 0.9, 0.02);
    for (String likelihood : LIKELIHOODS) {
      JsonNode result = fit(rows, likelihood);
      assertTrue(result.at("/threeLevel/betweenVariance").isMissingNode());
      assertTrue(at(result, "threeLevel.withinVariance") > 0);
      assertTrue(result.at("/heterogeneity/tauSquared").isMissingNode());
      assertTrue(Plans.warnings(result).contains("too-few-clusters"));
    }
  }

  @Test
  void aRowWithoutAClusterIsLeftOutAndAWrongColumnIsAProblem() {
    ArrayNode rows = Plans.rows();
    row(rows, "A", 0.1, 0.01);
    row(rows, "A", 0.5, 0.02);
    row(rows, "B", 0.9, 0.02);
    row(rows, "", 7, 0.02);
    JsonNode result = fit(rows, LIKELIHOODS.get(0));
    assertTrue(result.at("/studies/3/weightPercent").isMissingNode());
    assertTrue(at(result, "summary.estimate") < 1);
    assertTrue(Plans.warnings(result).contains("missing-value"));
    ObjectNode wrong = plan(rows, LIKELIHOODS.get(0)).put("cluster", "clinic");
    assertEquals(List.of("cluster unknown-column"), Plans.problems(wrong));
  }

  @Test
  void limitsRestOnClustersAndSharesAreToldAtEachLevel() {
    // By hand: the example of docs/methods/three-level.md; Student's t on 2 degrees of freedom has
    // 4.302652729911275 at 97.5 % (SciPy 1.17).
    double[] effects = {0.1, 0.3, 0.5, 0.9, 0.8, 0.6};
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      row(rows, "team " + i / 2, effects[i], 0.01);
    }
    JsonNode result = fit(rows, "restricted-maximum-likelihood");
    assertEquals("t-clusters", result.at("/plan/interval").asText());
    assertEquals(2, at(result, "summary.degreesOfFreedom"));
    double half = 4.302652729911275 / 6;
    assertEquals(1.6 / 3 - half, at(result, "summary.lower"), 1e-7);
    assertEquals(1.6 / 3 + half, at(result, "summary.upper"), 1e-7);
    double all = 0.19 / 3 + 0.03 + 0.01;
    assertEquals(100 * 0.19 / 3 / all, at(result, "threeLevel.iSquaredBetweenPercent"), 1e-5);
    assertEquals(3 / all, at(result, "threeLevel.iSquaredWithinPercent"), 1e-5);
    assertTrue(Plans.warnings(result).contains("few-clusters"));
    JsonNode normal =
        Plans.result(plan(rows, "restricted-maximum-likelihood").put("interval", "normal"));
    assertFalse(normal.at("/summary").has("degreesOfFreedom"));
  }

  @Test
  void moderatorsOfClustersAreTestedByFOnClustersLessCoefficients() {
    ArrayNode rows = Plans.rows();
    Random random = new Random(5);
    for (int i = 0; i < 12; i++) {
      row(rows, "team " + i / 2, random.nextGaussian(), 0.1);
      ((ObjectNode) rows.get(i)).put("length", 1 + i / 2 * i / 2);
    }
    ObjectNode plan = plan(rows, "restricted-maximum-likelihood");
    plan.putArray("moderators").add("length");
    JsonNode result = Plans.result(plan);
    assertEquals(4, at(result, "regression.coefficients[term=length].degreesOfFreedom"));
    assertEquals(4, at(result, "regression.moderatorTest.degreesOfFreedom[1]"));
    assertEquals(
        at(result, "regression.coefficients[term=length].pValue"),
        at(result, "regression.moderatorTest.pValue"),
        1e-9);
    assertEquals(
        List.of("moderatorTest interval-not-for-model"),
        Plans.problems(plan.put("model", "random-effects").put("moderatorTest", "t-clusters")));
  }

  @Test
  void onlyTheTwoLikelihoodsAreTaken() {
    ArrayNode rows = Plans.rows();
    row(rows, "A", 0.1, 0.01);
    assertEquals(
        List.of("betweenStudyVariance estimator-not-for-model"),
        Plans.problems(plan(rows, "hedges")));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void extremesGiveFiniteNumbersOrWarnings(long seed) {
    Random random = new Random(seed);
    for (int example = 0; example < 20; example++) {
      ArrayNode rows = Plans.rows();
      int k = 1 + random.nextInt(6);
      for (int i = 0; i < k; i++) {
        double size = Math.pow(10, random.nextInt(25) - 12);
        row(
            rows,
            "team " + random.nextInt(3),
            random.nextInt(4) * (random.nextBoolean() ? size : 1),
            random.nextInt(9) == 0 ? 0 : size);
      }
      for (String likelihood : LIKELIHOODS) {
        JsonNode result = fit(rows, likelihood);
        assertTrue(result.has("summary") || result.get("warnings").size() > 0);
        assertEquals(
            result.toString(), Plans.result(result.get("plan")).toString(), "the same again");
      }
    }
  }

  @Test
  void moderatorsAgreeWithDenseMatricesElsewhere() {
    // Base R 4.2.2, optim on the likelihood written with dense matrices; its search ends some six
    // digits short of the top.
    double[] effects = {0.1, 0.6, 0.7, 1.4, 0.2, -0.35, 1.1, 1.5, 0.9};
    double[] variances = {0.04, 0.05, 0.03, 0.06, 0.02, 0.08, 0.05, 0.02, 0.1};
    String[] teams = {"A", "A", "B", "B", "C", "C", "D", "D", "D"};
    double[] lengths = {1, 2, 2, 3, 1, 4, 3, 2, 5};
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 9; i++) {
      row(rows, teams[i], effects[i], variances[i]);
      ((ObjectNode) rows.get(i)).put("length", lengths[i]);
    }
    ObjectNode plan = plan(rows, "restricted-maximum-likelihood");
    plan.putArray("moderators").add("length");
    plan.put("robustVariance", "cr1");
    JsonNode result = Plans.result(plan);
    assertEquals(0.31486055645, at(result, "threeLevel.betweenVariance"), 2e-5);
    assertEquals(0.10466292904, at(result, "threeLevel.withinVariance"), 2e-5);
    String slope = "regression.coefficients[term=length].";
    assertEquals(-0.06788513102, at(result, slope + "estimate"), 2e-5);
    assertEquals(0.12246572963, at(result, slope + "standardError"), 2e-5);
    assertEquals(-8.20028950621, at(result, "fit.logLikelihood"), 1e-7);
    double z = at(result, slope + "statistic");
    assertEquals(z * z, at(result, "regression.moderatorTest.statistic"), 1e-9);
    assertEquals(4, at(result, "robust.clusters"));
    assertEquals(
        at(result, slope + "estimate"), at(result, "robust.coefficients[term=length].estimate"));
    assertFalse(result.has("summary"));
    assertTrue(Plans.warnings(result).contains("few-clusters"));
  }

  @Test
  void rowsLeftOutInTurnAreFittedAnew() {
    ArrayNode rows = Plans.rows();
    Random random = new Random(4);
    for (int i = 0; i < 7; i++) {
      row(rows, "team " + i / 2, random.nextGaussian(), 0.05 + random.nextDouble());
    }
    JsonNode result = Plans.result(plan(rows, LIKELIHOODS.get(0)).put("influence", true));
    ArrayNode rest = Plans.rows();
    for (int i = 0; i < 7; i++) {
      if (i != 2) {
        rest.add(rows.get(i).deepCopy());
      }
    }
    JsonNode without = fit(rest, LIKELIHOODS.get(0));
    assertEquals(
        at(without, "summary.estimate"), at(result, "influence.leaveOneOut[2].estimate"), 1e-12);
    assertEquals(
        at(without, "heterogeneity.tauSquared"),
        at(result, "influence.leaveOneOut[2].tauSquared"),
        1e-12);
    assertTrue(result.at("/influence/ofEachStudy").isMissingNode());
    assertTrue(Plans.warnings(result).contains("no-deletion-diagnostics"));
  }

  @Test
  void whatRowsOfClustersCannotBeAskedIsRefused() {
    ArrayNode rows = Plans.rows();
    row(rows, "A", 0.1, 0.01);
    ObjectNode tests = plan(rows, LIKELIHOODS.get(0));
    tests.putArray("smallStudyEffects").add("egger");
    assertTrue(Plans.problems(tests).contains("smallStudyEffects part-not-for-model"));
    ObjectNode both = plan(rows, LIKELIHOODS.get(0)).put("influence", true);
    both.putArray("moderators").add("effect");
    assertTrue(Plans.problems(both).contains("influence part-not-for-model"));
    ObjectNode scaled = plan(rows, LIKELIHOODS.get(0)).put("moderatorTest", "hartung-knapp");
    scaled.putArray("moderators").add("effect");
    assertTrue(Plans.problems(scaled).contains("moderatorTest interval-not-for-model"));
    ObjectNode narrow = plan(rows, LIKELIHOODS.get(0)).put("interval", "hartung-knapp");
    assertTrue(Plans.problems(narrow).contains("interval interval-not-for-model"));
  }

  @ParameterizedTest
  @ValueSource(longs = {31, 32, 33, 34, 35, 36})
  void extremesWithModeratorsGiveFiniteNumbersOrWarnings(long seed) {
    Random random = new Random(seed);
    for (int example = 0; example < 15; example++) {
      ArrayNode rows = Plans.rows();
      int k = 1 + random.nextInt(8);
      for (int i = 0; i < k; i++) {
        double size = Math.pow(10, random.nextInt(25) - 12);
        row(
            rows,
            random.nextInt(8) == 0 ? "" : "team " + random.nextInt(3),
            random.nextInt(4) * (random.nextBoolean() ? size : 1),
            random.nextBoolean() ? size : 1);
        ObjectNode cells = (ObjectNode) rows.get(i);
        cells.put("length", random.nextInt(4) * (random.nextInt(4) == 0 ? size : 1));
        cells.put("method", random.nextInt(6) == 0 ? "" : "m" + random.nextInt(3));
      }
      ObjectNode plan = plan(rows, LIKELIHOODS.get(example % 2));
      plan.putArray("moderators").add(random.nextBoolean() ? "length" : "method");
      plan.put("robustVariance", random.nextBoolean() ? "cr0" : "cr1");
      JsonNode result = Plans.result(plan);
      assertTrue(result.has("regression") || result.get("warnings").size() > 0);
      assertEquals(result.toString(), Plans.result(result.get("plan")).toString());
    }
  }

  @Test
  void manyRowsAreFittedInLinearTime() {
    ArrayNode rows = Plans.rows();
    Random random = new Random(9);
    for (int i = 0; i < 10_000; i++) {
      row(rows, "team " + i / 4, random.nextGaussian() / 2, 0.02 + random.nextDouble() / 5);
    }
    JsonNode result = fit(rows, LIKELIHOODS.get(0));
    assertEquals(0.25, at(result, "heterogeneity.tauSquared"), 0.1);
  }
}
