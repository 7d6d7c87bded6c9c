package gapwise.analysis.moderators;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What must hold of regressions for any data, with each estimator of the variance between studies;
 * and random moderators, which never break a plan. Tolerance 1e-8: searches for tau squared end at
 * rounding, which a shift or a scale moves.
 */
class RegressionLawsTest {
  private static final double SAME = 1e-8;

  /** One case: an estimator on data from a seed. */
  record Case(String estimator, long seed) {}

  /** One invented study. */
  record Study(double effect, double variance, double length, String method) {}

  static Stream<Case> cases() {
    return TauSquaredEstimators.all().stream()
        .flatMap(e -> IntStream.range(1, 5).mapToObj(seed -> new Case(e.name(), seed)));
  }

  private static List<Study> studies(long seed) {
    Random random = new Random(seed);
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < 8 + random.nextInt(12); i++) {
      studies.add(
          new Study(
              random.nextGaussian(),
              0.02 + random.nextDouble(),
              2 + 10 * random.nextDouble(),
              List.of("graft", "membrane", "transport").get(i % 3)));
    }
    return studies;
  }

  private static ArrayNode rows(List<Study> studies, double shift, double scale) {
    ArrayNode rows = Plans.rows();
    for (Study study : studies) {
      Plans.row(
          rows,
          "effect",
          study.effect() + shift,
          "variance",
          study.variance(),
          "length",
          scale * study.length());
      ((ObjectNode) rows.get(rows.size() - 1)).put("method", study.method());
    }
    return rows;
  }

  private static JsonNode fit(ArrayNode rows, Case example, String... moderators) {
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect");
    plan.put("betweenStudyVariance", example.estimator());
    for (String one : moderators) {
      plan.withArray("moderators").add(one);
    }
    return Plans.result(plan);
  }

  private static double at(JsonNode result, int term, String field) {
    return result.at("/regression/coefficients/" + term + "/" + field).asDouble();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void addingAConstantToEffectsMovesTheInterceptAlone(Case example) {
    List<Study> studies = studies(example.seed());
    JsonNode before = fit(rows(studies, 0, 1), example, "length", "method");
    JsonNode after = fit(rows(studies, 7, 1), example, "length", "method");
    assertEquals(at(before, 0, "estimate") + 7, at(after, 0, "estimate"), SAME);
    for (int j = 0; j < 4; j++) {
      assertEquals(at(before, j, "standardError"), at(after, j, "standardError"), SAME);
      assertEquals(at(before, j, "estimate") + (j == 0 ? 7 : 0), at(after, j, "estimate"), SAME);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void anotherUnitOfAModeratorScalesItsCoefficientAlone(Case example) {
    List<Study> studies = studies(example.seed());
    JsonNode centimetres = fit(rows(studies, 0, 1), example, "length", "method");
    JsonNode millimetres = fit(rows(studies, 0, 10), example, "length", "method");
    for (int j = 0; j < 4; j++) {
      double factor = j == 1 ? 10 : 1;
      assertEquals(at(centimetres, j, "estimate"), factor * at(millimetres, j, "estimate"), SAME);
      assertEquals(at(centimetres, j, "pValue"), at(millimetres, j, "pValue"), SAME);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theOrderOfStudiesDoesNotMatter(Case example) {
    List<Study> studies = studies(example.seed());
    JsonNode before = fit(rows(studies, 0, 1), example, "length", "method");
    Collections.shuffle(studies, new Random(example.seed()));
    JsonNode after = fit(rows(studies, 0, 1), example, "length", "method");
    for (int j = 0; j < 4; j++) {
      assertEquals(at(before, j, "estimate"), at(after, j, "estimate"), SAME);
      assertEquals(at(before, j, "upper"), at(after, j, "upper"), SAME);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void aCentreMovesTheInterceptToThatValueOfTheModerator(Case example) {
    ArrayNode rows = rows(studies(example.seed()), 0, 1);
    JsonNode plain = fit(rows, example, "length");
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect");
    plan.put("betweenStudyVariance", example.estimator());
    plan.withArray("moderators").addObject().put("column", "length").put("centre", 5);
    plan.withArray("predictions").addObject().put("length", 5);
    JsonNode centred = Plans.result(plan);
    assertEquals(at(plain, 1, "estimate"), at(centred, 1, "estimate"), SAME);
    assertEquals(
        at(plain, 0, "estimate") + 5 * at(plain, 1, "estimate"), at(centred, 0, "estimate"), SAME);
    for (String field : List.of("estimate", "standardError", "lower", "upper")) {
      assertEquals(
          at(centred, 0, field), centred.at("/regression/predictions/0/" + field).asDouble(), SAME);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void aRegressionOnGroupsIsSubgroupsWithOneVariance(Case example) {
    ArrayNode rows = rows(studies(example.seed()), 0, 1);
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "moderatorTest", "normal");
    plan.put("betweenStudyVariance", example.estimator());
    plan.withArray("moderators").add("method");
    JsonNode regression = Plans.result(plan);
    ObjectNode grouped =
        Plans.on(rows, "measure", "reported-effect", "subgroup", "method", "interval", "normal");
    grouped.put("betweenStudyVariance", example.estimator()).put("subgroupVariance", "common");
    JsonNode groups = Plans.result(grouped);
    assertEquals(
        groups.at("/betweenSubgroups/tauSquared").asDouble(),
        regression.at("/heterogeneity/tauSquared").asDouble(),
        SAME);
    assertEquals(
        groups.at("/betweenSubgroups/q").asDouble(),
        regression.at("/regression/moderatorTest/statistic").asDouble(),
        SAME * 100);
    double reference = groups.at("/subgroups/0/summary/estimate").asDouble();
    assertEquals(reference, at(regression, 0, "estimate"), SAME);
    assertEquals(
        groups.at("/subgroups/1/summary/estimate").asDouble() - reference,
        at(regression, 1, "estimate"),
        SAME);
  }

  @Test
  void robustVarianceOfStudiesEachItsOwnClusterIsThatOfWhite() {
    // One mean by common effect, weights 1 and 2 and 3 over 6: sum w^2 e^2 / 36 by hand.
    ArrayNode rows = Plans.rows();
    double[][] studies = {{1, 1}, {2, 0.5}, {4, 1.0 / 3}};
    for (double[] study : studies) {
      Plans.row(rows, "effect", study[0], "variance", study[1]);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "model", "common-effect");
    plan.put("cluster", "study").put("robustVariance", "cr0");
    double mean = (1 + 4 + 12) / 6.0;
    double sum = square(1 - mean) + 4 * square(2 - mean) + 9 * square(4 - mean);
    JsonNode robust = Plans.result(plan).get("robust");
    assertEquals(3, robust.get("clusters").asInt());
    assertEquals(Math.sqrt(sum / 36), robust.at("/coefficients/0/standardError").asDouble(), 1e-14);
    JsonNode corrected = Plans.result(plan.put("robustVariance", "cr1")).get("robust");
    assertEquals(
        Math.sqrt(sum / 36 * 3 / 2),
        corrected.at("/coefficients/0/standardError").asDouble(),
        1e-14);
  }

  private static double square(double x) {
    return x * x;
  }

  static IntStream seeds() {
    return IntStream.range(0, 30);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomModeratorsGiveAResultOrProblemsAndNeverAnException(int seed) {
    Random random = new Random(seed);
    for (int n = 0; n < 12; n++) {
      ObjectNode plan = randomPlan(random);
      PlanOutcome outcome = Runner.withoutEvidence().run(plan, Optional.empty());
      JsonNode json = outcome.json();
      if (outcome instanceof PlanOutcome.Wrong wrong) {
        assertFalse(wrong.problems().isEmpty());
        continue;
      }
      assertFalse(json.toString().contains("NaN") || json.toString().contains("Infinity"));
      if (!json.has("regression")) {
        assertTrue(json.get("warnings").size() > 0, () -> plan + " gave " + json);
      }
      JsonNode again = Runner.withoutEvidence().run(json.get("plan"), Optional.empty()).json();
      assertEquals(json.toString(), again.toString(), plan::toString);
    }
  }

  private static ObjectNode randomPlan(Random random) {
    ArrayNode rows = Plans.rows();
    int k = 1 + random.nextInt(9);
    double size = random.nextInt(5) > 0 ? 1 : Math.pow(10, random.nextInt(24) - 12);
    for (int i = 0; i < k; i++) {
      Plans.row(
          rows,
          "effect",
          (random.nextInt(4) - 1) * (random.nextInt(8) > 0 ? 1 : 1e12),
          "variance",
          random.nextInt(9) > 0 ? Math.pow(10, random.nextInt(4) - 2) * size : 0.0,
          "a",
          random.nextInt(3) * size,
          "b",
          random.nextDouble());
      ObjectNode row = (ObjectNode) rows.get(i);
      row.put("c", List.of("u", "v", "w", "").get(random.nextInt(4)));
      row.put("constant", 4);
      if (random.nextInt(9) == 0) {
        row.remove("b");
      }
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect");
    plan.put("model", random.nextBoolean() ? "random-effects" : "common-effect");
    List<String> estimators = TauSquaredEstimators.all().stream().map(one -> one.name()).toList();
    plan.put("betweenStudyVariance", estimators.get(random.nextInt(estimators.size())));
    ArrayNode moderators = plan.putArray("moderators");
    for (String one : List.of("a", "b", "c")) {
      if (random.nextBoolean()) {
        moderators.add(one);
      }
    }
    switch (random.nextInt(6)) {
      case 0 -> moderators.add("constant");
      case 1 -> moderators.addObject().putArray("product").add("a").add("c");
      case 2 -> moderators.addObject().put("column", "b").putObject("spline").put("count", 3);
      case 3 -> moderators.addObject().put("column", "c").put("reference", "u");
      case 4 -> moderators.addObject().put("column", "a").put("centre", 1e6);
      default -> moderators.addObject().putArray("product").add("b").add("b");
    }
    plan.put("influence", random.nextBoolean());
    if (random.nextBoolean()) {
      plan.putObject("permutationTest").put("permutations", 100);
    }
    if (random.nextBoolean()) {
      plan.putArray("predictions").addObject();
    }
    if (random.nextBoolean()) {
      plan.put("cluster", "c").put("robustVariance", "cr1");
    }
    return plan;
  }
}
