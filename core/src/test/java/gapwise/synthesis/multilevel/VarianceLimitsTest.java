package gapwise.synthesis.multilevel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import gapwise.effect.Interval;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;

/**
 * Limits of the variances of three levels and of their shares. Values by SciPy on whole matrices:
 * core/src/test/reference/three_level_limits.py.
 */
class VarianceLimitsTest {
  private static final double[] EFFECTS = {0.1, 0.5, 0.9, 0.2, 1.2, 0.8, 0.7, 1.1, 0.3, 0.6};
  private static final double[] ERRORS = {0.2, 0.25, 0.3, 0.22, 0.35, 0.28, 0.3, 0.4, 0.21, 0.26};
  private static final List<String> TEAMS = List.of("xxyyzzwwwx".split(""));

  private static ThreeLevelFit fit(boolean restricted, List<String> teams) {
    EffectSample sample =
        EffectSample.of(EFFECTS, Arrays.stream(ERRORS).map(error -> error * error).toArray());
    return ThreeLevelModel.fit(ClusteredRows.of(sample, teams), restricted);
  }

  private static void are(double lower, double upper, Optional<Interval> found) {
    assertEquals(lower, found.orElseThrow().lower(), 2e-6);
    assertEquals(upper, found.orElseThrow().upper(), 2e-6);
  }

  @Test
  void tenRowsOfFourTeamsByTheRestrictedLikelihood() {
    VarianceLimits limits = fit(true, TEAMS).limits(0.95).orElseThrow();
    are(0, 0.447177, limits.between());
    are(0, 0.320659, limits.within());
    are(0, 0.813117, limits.shareBetween());
    are(0, 0.823894, limits.shareWithin());
  }

  @Test
  void tenRowsOfFourTeamsByTheFullLikelihood() {
    VarianceLimits limits = fit(false, TEAMS).limits(0.95).orElseThrow();
    are(0, 0.203514, limits.between());
    are(0, 0.256553, limits.within());
    are(0, 0.676381, limits.shareBetween());
    are(0, 0.789167, limits.shareWithin());
  }

  /** The published effects of delinquency in studies, 100 rows of 17. */
  @Test
  void publishedEffectsByBothLikelihoods() throws IOException, URISyntaxException {
    String path = "/published/delinquency-three-level/delinquency-three-level.csv";
    URL file = Objects.requireNonNull(getClass().getResource(path), path);
    List<String[]> rows =
        Files.readAllLines(Path.of(file.toURI())).stream()
            .skip(1)
            .map(line -> line.split(","))
            .toList();
    EffectSample sample =
        EffectSample.of(
            rows.stream().mapToDouble(row -> Double.parseDouble(row[2])).toArray(),
            rows.stream().mapToDouble(row -> Double.parseDouble(row[3])).toArray());
    ClusteredRows clusters = ClusteredRows.of(sample, rows.stream().map(row -> row[0]).toList());
    VarianceLimits full = ThreeLevelModel.fit(clusters, false).limits(0.95).orElseThrow();
    are(0.079592, 0.423837, full.between());
    are(0.066847, 0.180253, full.within());
    are(0.344437, 0.774210, full.shareBetween());
    are(0.180609, 0.569044, full.shareWithin());
    VarianceLimits limits = ThreeLevelModel.fit(clusters, true).limits(0.95).orElseThrow();
    are(0.084412, 0.467340, limits.between());
    are(0.067085, 0.181011, limits.within());
    are(0.357537, 0.789988, limits.shareBetween());
    are(0.168315, 0.557682, limits.shareWithin());
  }

  /** Where the estimate of a variance is above its lower limit, lower levels lie inside. */
  @Test
  void limitsHoldTheEstimateAndGrowWithTheLevel() {
    for (boolean restricted : new boolean[] {true, false}) {
      ThreeLevelFit fit = fit(restricted, List.of("xxxyyyzzww".split("")));
      VarianceLimits wide = fit.limits(0.95).orElseThrow();
      VarianceLimits narrow = fit.limits(0.5).orElseThrow();
      inside(wide.between(), narrow.between(), fit.betweenVariance().orElseThrow());
      inside(wide.within(), narrow.within(), fit.withinVariance().orElseThrow());
      inside(wide.shareBetween(), narrow.shareBetween(), fit.iSquaredBetween().orElseThrow());
      inside(wide.shareWithin(), narrow.shareWithin(), fit.iSquaredWithin().orElseThrow());
      assertTrue(wide.shareBetween().orElseThrow().upper() < 1);
    }
  }

  private static void inside(Optional<Interval> wide, Optional<Interval> narrow, double estimate) {
    Interval outer = wide.orElseThrow();
    Interval inner = narrow.orElseThrow();
    assertTrue(0 <= outer.lower() && outer.lower() <= inner.lower());
    assertTrue(inner.lower() <= estimate && estimate <= inner.upper());
    assertTrue(inner.upper() < outer.upper());
  }

  /**
   * Rows of one cluster without errors worth the name: within is the variance of normal values, its
   * restricted likelihood -(n - 1)/2 log w - S/(2 w), whose limits satisfy x - log x = 1 + c/(n -
   * 1) for x = S/((n - 1) w).
   */
  @Test
  void oneClusterHasTheLimitsOfTheVarianceOfNormalValues() {
    int n = EFFECTS.length;
    double[] tiny = new double[n];
    Arrays.fill(tiny, 1e-12);
    ThreeLevelFit fit =
        ThreeLevelModel.fit(
            ClusteredRows.of(EffectSample.of(EFFECTS, tiny), Collections.nCopies(n, "x")), true);
    VarianceLimits limits = fit.limits(0.95).orElseThrow();
    double mean = Arrays.stream(EFFECTS).average().orElseThrow();
    double variance = Arrays.stream(EFFECTS).map(y -> (y - mean) * (y - mean)).sum() / (n - 1);
    double c = ChiSquaredDistribution.of(1).inverseCumulativeProbability(0.95);
    for (double limit :
        List.of(limits.within().orElseThrow().lower(), limits.within().orElseThrow().upper())) {
      double x = variance / limit;
      assertEquals(1 + c / (n - 1), x - Math.log(x), 1e-6);
    }
    assertTrue(limits.between().isEmpty() && limits.shareBetween().isEmpty());
  }

  private static JsonNode result(int rows, int clusters) {
    Random random = new Random(7);
    ArrayNode list = Plans.rows();
    double[] teams = random.doubles(clusters).toArray();
    for (int i = 0; i < rows; i++) {
      Plans.row(
          list,
          "effect",
          teams[i % clusters] + random.nextGaussian() / 2,
          "standardError",
          0.2 + random.nextDouble() / 5);
      ((ObjectNode) list.get(i)).put("team", "T" + i % clusters);
    }
    ObjectNode plan = Plans.on(list, "measure", "reported-effect", "model", "three-level");
    return Plans.result(plan.put("cluster", "team").put("predictionInterval", "t-k-minus-2"));
  }

  @Test
  void aResultTellsThemAndSaysWhenClustersAreFew() {
    JsonNode few = result(20, 6);
    assertTrue(Plans.warnings(few).contains("i-squared-of-few-studies"));
    JsonNode many = result(60, 15);
    assertTrue(!Plans.warnings(many).contains("i-squared-of-few-studies"));
    for (JsonNode one : List.of(few.get("threeLevel"), many.get("threeLevel"))) {
      List<String> names = new ArrayList<>();
      one.fieldNames().forEachRemaining(names::add);
      assertEquals(12, names.size());
      for (String name :
          List.of(
              "betweenVariance",
              "withinVariance",
              "iSquaredBetweenPercent",
              "iSquaredWithinPercent")) {
        double value = one.get(name).asDouble();
        assertTrue(one.get(name + "Lower").asDouble() <= value, name);
        assertTrue(value <= one.get(name + "Upper").asDouble(), name);
      }
      assertTrue(one.get("iSquaredBetweenPercentUpper").asDouble() < 100);
    }
  }
}
