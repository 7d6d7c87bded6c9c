package gapwise.analysis.network;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
import gapwise.effect.arms.MultiArmMeasures;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.RankDraws;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The model {@code network} in a plan: its defaults, and how its fields become settings. */
public final class NetworkModel {
  private static final String UNKNOWN_SPREAD = "unknown-spread";
  private static final int USUAL_DRAWS = 10_000;
  private static final long USUAL_SEED = 1;

  private NetworkModel() {}

  /** The usual test of a moderator: a variance that is estimated leaves doubt of its own. */
  public static String moderatorTest(Filling plan) {
    return plan.is("networkEffects", "random") ? NetworkModerator.STUDENT_T : "normal";
  }

  /** Whether a plan asks for it. */
  public static boolean asked(ObjectNode plan) {
    return plan.path("model").asText().equals("network");
  }

  /** Fills in what the plan leaves out. */
  public static void fill(Filling plan) {
    plan.text("networkEffects", "random");
    if (plan.is("networkEffects", "random")) {
      plan.text("predictionInterval", UNKNOWN_SPREAD);
    }
    if (plan.is("networkEffects", "random") && !ExactModels.isNetwork(plan.full())) {
      plan.text("betweenStudyVariance", "restricted-maximum-likelihood");
      plan.text("tauSquaredInterval", "q-profile");
    }
    plan.full().put("rankingDraws", plan.given().path("rankingDraws").asInt(USUAL_DRAWS));
    plan.whole("seed", USUAL_SEED);
  }

  /**
   * The settings of a checked plan.
   *
   * @param options of its measure
   * @param unused what it says without bearing
   */
  public static NetworkPlan read(
      ObjectNode full, MeasureOptions options, List<Result.Warning> unused) {
    PlanHead head = PlanHead.of(full);
    boolean exact = ExactModels.isNetwork(full);
    boolean contrasts = head.measure().equals(NetworkRules.CONTRASTS);
    return new NetworkPlan(
        head,
        MultiArmMeasures.named(head.measure(), options),
        contrasts ? Optional.of(Measures.reported(options)) : Optional.empty(),
        settings(full, exact),
        exact,
        Optional.ofNullable(full.get("reference")).map(JsonNode::asText),
        Optional.ofNullable(full.get("better")).map(better -> better.asText().equals("higher")),
        new RankDraws(full.get("seed").asLong(), full.get("rankingDraws").asInt()),
        NetworkModerator.of(full),
        unused);
  }

  private static NetworkSettings settings(ObjectNode full, boolean exact) {
    boolean common = full.get("networkEffects").asText().equals("common");
    return new NetworkSettings(
        common
            ? Optional.empty()
            : TauSquaredEstimators.named(
                exact ? "maximum-likelihood" : full.get("betweenStudyVariance").asText()),
        full.path("predictionInterval").asText(UNKNOWN_SPREAD).equals(UNKNOWN_SPREAD)
            ? NetworkPredictions.Spread.UNKNOWN
            : NetworkPredictions.Spread.T_K_MINUS_2,
        TauSquaredInterval.valueOf(
            full.path("tauSquaredInterval")
                .asText("q-profile")
                .toUpperCase(Locale.ROOT)
                .replace('-', '_')),
        full.get("level").asDouble());
  }
}
