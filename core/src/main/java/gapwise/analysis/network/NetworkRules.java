package gapwise.analysis.network;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.ExactModels;
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
    likelihood(plan, problems);
    String estimator = plan.path("betweenStudyVariance").asText(ESTIMATORS.get(0));
    if (!ESTIMATORS.contains(estimator) && !ExactModels.isNetwork(plan)) {
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

  private static void likelihood(ObjectNode plan, Problems problems) {
    if (!plan.has("likelihood")) {
      return;
    }
    if (!ExactModels.isNetwork(plan)) {
      problems.add(
          "likelihood",
          "model-not-for-measure",
          "'"
              + plan.get("likelihood").asText()
              + "' is not made for a network, which has 'conditional' for odds ratios of arms; leave"
              + " it out for effects with normal errors");
      return;
    }
    if (!plan.get("measure").asText().equals("odds-ratio")) {
      problems.add(
          "likelihood",
          "model-not-for-measure",
          "the exact likelihood of a network is for the measure 'odds-ratio' with rows that are arms;"
              + " found '"
              + plan.get("measure").asText()
              + "', leave 'likelihood' out");
    }
    if (plan.path("uninformativeStudies").asText().equals("keep")) {
      problems.add(
          "uninformativeStudies",
          "part-not-for-model",
          "the likelihood of a study without an event, or with nothing else, is the same whatever the"
              + " odds ratios, so there is nothing to keep; leave it out");
    }
    if (plan.path("predictionInterval").asText().equals("t-k-minus-2")) {
      problems.add(
          "predictionInterval",
          "interval-not-for-model",
          "'t-k-minus-2' rests on the degrees of freedom of Q, which an exact likelihood does not"
              + " have; take 'unknown-spread'");
    }
    if (plan.has("moderators")) {
      problems.add(
          "moderators",
          "part-not-for-model",
          "the exact likelihood of a network has no slope along a number of studies; leave"
              + " 'likelihood' out, or the moderators");
    }
  }

  private static void notForNetwork(String field, Problems problems) {
    problems.add(
        field,
        "part-not-for-model",
        "'" + field + "' needs one effect a study, which a network does not have; remove it");
  }
}
