package gapwise.analysis.network;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.arms.MultiArmMeasures;
import gapwise.problem.Problems;
import java.util.List;

/** What a plan of the model {@code network} may not ask. */
public final class NetworkRules {
  /** The measure of rows that are contrasts. */
  static final String CONTRASTS = "reported-effect";

  private static final List<String> ESTIMATORS =
      List.of("restricted-maximum-likelihood", "maximum-likelihood", "dersimonian-laird");

  /** Parts that rest on one effect a study, which a network does not have. */
  private static final List<String> ONE_EFFECT_A_STUDY =
      List.of("subgroup", "permutationTest", "cumulativeBy", "cluster", "robustVariance");

  private NetworkRules() {}

  public static void check(ObjectNode plan, Problems problems) {
    String measure = plan.get("measure").asText();
    if (!measure.equals(CONTRASTS) && !MultiArmMeasures.names().contains(measure)) {
      problems.add(
          "model",
          "model-not-for-measure",
          "a network compares treatments within studies, and '"
              + measure
              + "' is of single arms, which compare nothing; take one of "
              + MultiArmMeasures.names()
              + " for rows that are arms, or '"
              + CONTRASTS
              + "' for rows that are contrasts");
    }
    String estimator = plan.path("betweenStudyVariance").asText(ESTIMATORS.get(0));
    if (!ESTIMATORS.contains(estimator)) {
      problems.add(
          "betweenStudyVariance",
          "estimator-not-for-model",
          "'" + estimator + "' is not defined for a network, which has " + ESTIMATORS);
    }
    NetworkModerator.check(plan, problems);
    for (String field : ONE_EFFECT_A_STUDY) {
      if (plan.has(field)) {
        notForNetwork(field, problems);
      }
    }
    if (plan.path("influence").asBoolean()) {
      notForNetwork("influence", problems);
    }
    if (plan.path("smallStudyEffects").size() > 0) {
      notForNetwork("smallStudyEffects", problems);
    }
  }

  private static void notForNetwork(String field, Problems problems) {
    problems.add(
        field,
        "part-not-for-model",
        "'" + field + "' needs one effect a study, which a network does not have; remove it");
  }
}
