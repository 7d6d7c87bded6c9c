package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Data at the edge of what can occur: nothing breaks, and shown proportions stay proportions. */
class ExtremesTest {
  /** A scale with counts. */
  record Case(String scale, String name, int[][] counts) {}

  static Stream<Case> cases() {
    Random random = new Random(11);
    int[][] large = new int[6][];
    for (int i = 0; i < large.length; i++) {
      large[i] = new int[] {random.nextInt(1_000_001), 1_000_000};
    }
    return Stream.of("logit", "double-arcsine", "arcsine", "log", "raw")
        .flatMap(
            scale ->
                Stream.of(
                    new Case(scale, "none", new int[][] {{0, 9}, {0, 30}, {0, 4}}),
                    new Case(scale, "all", new int[][] {{9, 9}, {30, 30}, {4, 4}}),
                    new Case(scale, "none and all", new int[][] {{0, 12}, {12, 12}}),
                    new Case(scale, "one patient each", new int[][] {{0, 1}, {1, 1}, {1, 1}}),
                    new Case(scale, "near all", new int[][] {{29, 30}, {11, 12}, {7, 8}}),
                    new Case(scale, "a million", large),
                    new Case(scale, "one in a million", new int[][] {{1, 1_000_000}, {3, 5}})));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void shownProportionsStayWithinZeroAndOneWhateverTheInterval(Case example) {
    for (String model : List.of("random-effects", "common-effect")) {
      ArrayNode rows = Plans.rows();
      for (int[] count : example.counts()) {
        Plans.row(rows, "events", count[0], "total", count[1]);
      }
      ObjectNode plan =
          Plans.on(rows, "measure", "proportion", "scale", example.scale(), "model", model);
      JsonNode result = Plans.result(plan);
      int shown = 0;
      for (JsonNode study : result.get("studies")) {
        shown += within(study.get("shown"));
      }
      assertEquals(example.counts().length, shown, "every arm is shown with its exact interval");
      if (result.has("summary")) {
        within(result.at("/summary/shown"));
      } else {
        assertTrue(Plans.warnings(result).contains("zero-variance"), result.toString());
      }
    }
  }

  private static int within(JsonNode shown) {
    double lower = shown.get("lower").asDouble();
    double estimate = shown.get("estimate").asDouble();
    double upper = shown.get("upper").asDouble();
    assertTrue(
        0 <= lower && lower <= estimate && estimate <= upper && upper <= 1, shown.toString());
    if (shown.has("predictionLower")) {
      assertTrue(shown.get("predictionLower").asDouble() >= 0);
      assertTrue(shown.get("predictionUpper").asDouble() <= 1);
    }
    return 1;
  }

  @Test
  void tinyVariancesKeepTheirDigits() {
    // Two means 2e-6 apart with squared standard errors of 1e-12 each: Q is (2e-6)^2 / 2e-12 = 2,
    // the DerSimonian-Laird value (Q - 1) times the variance, here 1e-12.
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 100, "mean", 5.000001, "sd", 1e-5);
    Plans.row(rows, "n", 100, "mean", 4.999999, "sd", 1e-5);
    JsonNode result =
        Plans.result(
            Plans.on(
                rows,
                "measure",
                "mean",
                "betweenStudyVariance",
                "dersimonian-laird",
                "interval",
                "normal"));
    // The difference itself is known to 2e-16 * 5 / 2e-6, some 5e-10 of its size.
    assertEquals(2, result.at("/heterogeneity/q").asDouble(), 4e-9);
    assertEquals(1e-12, result.at("/heterogeneity/tauSquared").asDouble(), 1e-20);
    assertEquals(5, result.at("/summary/estimate").asDouble(), 1e-15);
  }

  @Test
  void numbersTooLargeForArithmeticGiveAWarningAndNoTrace() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 10, "mean", 1e300, "sd", 1e200);
    Plans.row(rows, "n", 10, "mean", -1e300, "sd", 1e10);
    Plans.row(rows, "n", 10, "mean", 5, "sd", 1);
    for (String model : List.of("random-effects", "common-effect")) {
      JsonNode result = Plans.result(Plans.on(rows, "measure", "mean", "model", model));
      assertTrue(result.get("warnings").size() > 0, result.toString());
    }
  }

  @Test
  void effectsFarBeyondTheirErrorsGiveAWarningOrAResultButNoTrace() {
    for (double size : new double[] {1e100, 1e150, 1e160, 1e200, 1e307}) {
      for (String interval : List.of("hartung-knapp", "profile-likelihood")) {
        ArrayNode rows = Plans.rows();
        Plans.row(rows, "n", 10, "mean", size, "sd", 1);
        Plans.row(rows, "n", 10, "mean", 0, "sd", 1);
        Plans.row(rows, "n", 10, "mean", -size, "sd", 1);
        JsonNode result = Plans.result(Plans.on(rows, "measure", "mean", "interval", interval));
        assertTrue(result.has("summary") || result.get("warnings").size() > 0);
      }
    }
  }

  @Test
  void manyStudiesArePooledInLinearTime() {
    ArrayNode rows = Plans.rows();
    Random random = new Random(5);
    int k = 20_000;
    for (int i = 0; i < k; i++) {
      int n = 5 + random.nextInt(50);
      Plans.row(rows, "events", random.nextInt(n + 1), "total", n);
    }
    JsonNode result = Plans.result(Plans.on(rows));
    assertEquals(k, result.at("/data/studies").asInt());
    assertEquals(k - 1, result.at("/heterogeneity/degreesOfFreedom").asInt());
  }
}
