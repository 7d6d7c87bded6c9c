package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What must hold for any data, whatever the numbers: seeded data, each estimator of the variance
 * between studies. Relative tolerance 1e-9: ten thousand times the rounding of a double sum.
 */
class InvarianceTest {
  private static final double RELATIVE = 1e-9;

  /** One case: an estimator on data from a seed. */
  record Case(String estimator, long seed) {}

  static Stream<Case> cases() {
    return TauSquaredEstimators.all().stream()
        .flatMap(e -> IntStream.range(1, 9).mapToObj(seed -> new Case(e.name(), seed)));
  }

  /** All but Sidik and Jonkman's estimator, which is never 0. */
  static Stream<Case> casesThatCanBeZero() {
    return cases().filter(example -> !example.estimator().equals("sidik-jonkman"));
  }

  /** Means of 2 to 12 studies of 2 to 80 patients. */
  private static List<double[]> means(long seed) {
    Random random = new Random(seed);
    List<double[]> studies = new ArrayList<>();
    int k = 2 + random.nextInt(11);
    for (int i = 0; i < k; i++) {
      studies.add(
          new double[] {
            2 + random.nextInt(79), 6 + 3 * random.nextGaussian(), 0.5 + 3 * random.nextDouble()
          });
    }
    return studies;
  }

  private static JsonNode pool(
      List<double[]> studies, Case example, double scale, double shift, String interval) {
    ArrayNode rows = Plans.rows();
    for (double[] study : studies) {
      Plans.row(rows, "n", study[0], "mean", scale * study[1] + shift, "sd", scale * study[2]);
    }
    return Plans.result(
        Plans.on(
            rows,
            "measure",
            "mean",
            "betweenStudyVariance",
            example.estimator(),
            "interval",
            interval));
  }

  private static void same(double expected, JsonNode found, double size) {
    assertEquals(expected, found.asDouble(), RELATIVE * Math.max(Math.abs(expected), size));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theOrderOfStudiesDoesNotMatter(Case example) {
    List<double[]> studies = means(example.seed());
    JsonNode first = pool(studies, example, 1, 0, "hartung-knapp").get("summary");
    Collections.shuffle(studies, new Random(example.seed()));
    JsonNode second = pool(studies, example, 1, 0, "hartung-knapp").get("summary");
    for (String field : List.of("estimate", "standardError", "lower", "upper")) {
      same(first.get(field).asDouble(), second.get(field), 1);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void anotherUnitScalesTheMeanAndTheVariance(Case example) {
    List<double[]> studies = means(example.seed());
    JsonNode centimetres = pool(studies, example, 1, 0, "hartung-knapp");
    JsonNode millimetres = pool(studies, example, 10, 0, "hartung-knapp");
    JsonNode summary = centimetres.get("summary");
    for (String field : List.of("estimate", "standardError", "lower", "upper")) {
      same(10 * summary.get(field).asDouble(), millimetres.get("summary").get(field), 1);
    }
    JsonNode heterogeneity = centimetres.get("heterogeneity");
    for (String field : List.of("tauSquared", "tauSquaredLower", "tauSquaredUpper")) {
      same(
          100 * heterogeneity.get(field).asDouble(),
          millimetres.get("heterogeneity").get(field),
          1);
    }
    same(
        heterogeneity.get("iSquaredPercent").asDouble(),
        millimetres.get("heterogeneity").get("iSquaredPercent"),
        1);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void addingAConstantMovesTheMeanAndNothingElse(Case example) {
    List<double[]> studies = means(example.seed());
    JsonNode before = pool(studies, example, 1, 0, "normal");
    JsonNode after = pool(studies, example, 1, 1000, "normal");
    same(before.get("summary").get("estimate").asDouble() + 1000, after.at("/summary/estimate"), 1);
    same(before.at("/summary/standardError").asDouble(), after.at("/summary/standardError"), 1);
    same(
        before.at("/heterogeneity/tauSquared").asDouble(),
        after.at("/heterogeneity/tauSquared"),
        1);
    same(before.at("/heterogeneity/q").asDouble(), after.at("/heterogeneity/q"), 1);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void swappingTheGroupsMirrorsTheEffect(Case example) {
    Random random = new Random(example.seed());
    for (String measure : List.of("odds-ratio", "risk-ratio", "risk-difference")) {
      ArrayNode rows = Plans.rows();
      ArrayNode swapped = Plans.rows();
      for (int i = 0; i < 6; i++) {
        int n1 = 10 + random.nextInt(60);
        int n2 = 10 + random.nextInt(60);
        int a = 1 + random.nextInt(n1 - 1);
        int c = 1 + random.nextInt(n2 - 1);
        counts(rows, a, n1, c, n2);
        counts(swapped, c, n2, a, n1);
      }
      JsonNode one = mirrored(rows, measure, example);
      JsonNode other = mirrored(swapped, measure, example);
      same(-one.at("/summary/estimate").asDouble(), other.at("/summary/estimate"), 1);
      same(-one.at("/summary/lower").asDouble(), other.at("/summary/upper"), 1);
      same(
          one.at("/heterogeneity/tauSquared").asDouble(), other.at("/heterogeneity/tauSquared"), 1);
    }
  }

  private static void counts(ArrayNode rows, int a, int n1, int c, int n2) {
    Plans.row(
        rows,
        "intervention.events",
        a,
        "intervention.total",
        n1,
        "comparator.events",
        c,
        "comparator.total",
        n2);
  }

  private static JsonNode mirrored(ArrayNode rows, String measure, Case example) {
    return Plans.result(
        Plans.on(rows, "measure", measure, "betweenStudyVariance", example.estimator()));
  }

  @ParameterizedTest
  @MethodSource("casesThatCanBeZero")
  void withoutSpreadBetweenStudiesRandomEffectsBecomeTheCommonEffect(Case example) {
    Random random = new Random(example.seed());
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 5; i++) {
      // Means a hundredth of a standard error apart: no estimator sees spread between studies.
      Plans.row(
          rows,
          "n",
          20 + i,
          "mean",
          5 + 0.002 * random.nextDouble(),
          "sd",
          1 + random.nextDouble());
    }
    JsonNode at =
        Plans.result(
            Plans.on(
                rows,
                "measure",
                "mean",
                "betweenStudyVariance",
                example.estimator(),
                "interval",
                "normal"));
    JsonNode common = Plans.result(Plans.on(rows, "measure", "mean", "model", "common-effect"));
    assertEquals(0, at.at("/heterogeneity/tauSquared").asDouble());
    assertTrue(Plans.warnings(at).contains("between-study-variance-at-zero"));
    for (String field : List.of("estimate", "standardError", "lower", "upper")) {
      same(common.at("/summary/" + field).asDouble(), at.at("/summary/" + field), 0);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {3, 17, 101})
  void everyStudyTwiceHalvesTheVarianceOfACommonEffect(long seed) {
    Random random = new Random(seed);
    ArrayNode once = Plans.rows();
    ArrayNode twice = Plans.rows();
    for (int i = 0; i < 7; i++) {
      double effect = random.nextGaussian();
      double variance = Math.exp(4 * random.nextGaussian());
      Plans.row(once, "effect", effect, "variance", variance);
      Plans.row(twice, "effect", effect, "variance", variance);
      Plans.row(twice, "effect", effect, "variance", variance);
    }
    JsonNode one = common(once);
    JsonNode two = common(twice);
    double error = one.at("/summary/standardError").asDouble();
    same(one.at("/summary/estimate").asDouble(), two.at("/summary/estimate"), error);
    same(error / Math.sqrt(2), two.at("/summary/standardError"), error);
    same(2 * one.at("/heterogeneity/q").asDouble(), two.at("/heterogeneity/q"), 1);
  }

  private static JsonNode common(ArrayNode rows) {
    return Plans.result(Plans.on(rows, "measure", "reported-effect", "model", "common-effect"));
  }

  /** As tau squared outgrows every variance within, all studies weigh the same. */
  @ParameterizedTest
  @MethodSource("cases")
  void whereSpreadOutgrowsAllErrorsTheMeanIsThePlainOne(Case example) {
    Random random = new Random(example.seed());
    ArrayNode rows = Plans.rows();
    int studies = 6;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < studies; i++) {
      double effect = 10 * random.nextGaussian();
      sum += effect;
      squares += effect * effect;
      Plans.row(rows, "effect", effect, "variance", 1e-9 * (1 + random.nextDouble()));
    }
    double mean = sum / studies;
    double variance = (squares - studies * mean * mean) / (studies - 1);
    JsonNode at =
        Plans.result(
            Plans.on(
                rows,
                "measure",
                "reported-effect",
                "betweenStudyVariance",
                example.estimator(),
                "interval",
                "hartung-knapp"));
    double error = Math.sqrt(variance / studies);
    assertEquals(mean, at.at("/summary/estimate").asDouble(), 1e-8 * error);
    assertEquals(error, at.at("/summary/standardError").asDouble(), 1e-8 * error);
    if (Set.of("restricted-maximum-likelihood", "paule-mandel", "hedges")
        .contains(example.estimator())) {
      assertEquals(variance, at.at("/heterogeneity/tauSquared").asDouble(), 1e-8 * variance);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void fewStudiesNeverBreakAndSayWhatTheyCannot(Case example) {
    List<double[]> studies = means(example.seed());
    for (String interval :
        List.of("hartung-knapp", "hartung-knapp-never-narrower", "normal", "profile-likelihood")) {
      JsonNode one = pool(studies.subList(0, 1), example, 1, 0, interval);
      assertTrue(Plans.warnings(one).contains("single-study"));
      same(studies.get(0)[1], one.at("/summary/estimate"), 0);
      assertTrue(one.at("/heterogeneity/tauSquared").isMissingNode());
      assertTrue(one.at("/summary/predictionLower").isMissingNode());
      JsonNode two = pool(studies.subList(0, 2), example, 1, 0, interval);
      assertTrue(Plans.warnings(two).contains("too-few-studies"));
      assertTrue(two.at("/summary/predictionLower").isMissingNode());
      assertTrue(two.at("/summary/lower").asDouble() <= two.at("/summary/upper").asDouble());
    }
  }
}
