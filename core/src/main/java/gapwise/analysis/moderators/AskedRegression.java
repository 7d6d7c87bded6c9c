package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.pooling.PlacesPart;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a plan with moderators asks.
 *
 * @param moderators in its order
 * @param test of coefficients; a common effect has the normal one
 * @param predictions in its order
 * @param permutation a test by permutation, if asked for
 * @param withoutEach whether the regression is told without each study
 * @param places of values at each prediction
 */
public record AskedRegression(
    List<AskedModerator> moderators,
    RegressionTest test,
    List<AskedPrediction> predictions,
    Optional<Permutation> permutation,
    boolean withoutEach,
    PlacesPart places) {
  private static final int USUAL_PERMUTATIONS = 1000;
  private static final long USUAL_SEED = 20261125;
  private static final int USUAL_POINTS = 60;

  public AskedRegression {
    moderators = List.copyOf(moderators);
    predictions = List.copyOf(predictions);
  }

  /** A test by permutation. */
  record Permutation(int permutations, long seed) {}

  /**
   * Fills in what a plan with moderators leaves out.
   *
   * @param test the usual one of its model
   */
  public static void fill(Filling plan, String test) {
    plan.text("moderatorTest", test);
    for (JsonNode one : plan.full().path("predictions")) {
      if (one.has("column") && one.has("from") && one.has("to") && !one.has("points")) {
        ((ObjectNode) one).put("points", USUAL_POINTS);
      }
    }
    if (plan.given().has("permutationTest")) {
      JsonNode given = plan.given().get("permutationTest");
      ObjectNode permutations = plan.full().putObject("permutationTest");
      permutations.put("permutations", given.path("permutations").asInt(USUAL_PERMUTATIONS));
      permutations.put("seed", given.path("seed").asLong(USUAL_SEED));
    }
  }

  /** What a checked plan asks; empty without moderators. */
  public static Optional<AskedRegression> of(ObjectNode full, PoolingSettings settings) {
    if (!full.has("moderators")) {
      return Optional.empty();
    }
    List<AskedModerator> moderators = new ArrayList<>();
    full.get("moderators").forEach(one -> moderators.add(AskedModerator.of(one)));
    List<AskedPrediction> predictions = new ArrayList<>();
    full.path("predictions").forEach(one -> predictions.add(AskedPrediction.of(one)));
    JsonNode permutation = full.path("permutationTest");
    return Optional.of(
        new AskedRegression(
            moderators,
            test(full, settings),
            predictions,
            permutation.isObject()
                ? Optional.of(
                    new Permutation(
                        permutation.get("permutations").asInt(), permutation.get("seed").asLong()))
                : Optional.empty(),
            full.path("influence").asBoolean(),
            PlacesPart.of(full)));
  }

  /** How coefficients of a checked plan are tested, with moderators or without. */
  public static RegressionTest test(ObjectNode full, PoolingSettings settings) {
    return settings.estimator().isEmpty()
        ? RegressionTest.NORMAL
        : RegressionTest.valueOf(
            full.path("moderatorTest")
                .asText("hartung-knapp")
                .toUpperCase(Locale.ROOT)
                .replace('-', '_'));
  }

  /** How the coefficients are fitted and tested. */
  RegressionSettings settings(PoolingSettings pooling) {
    return new RegressionSettings(pooling, test);
  }
}
