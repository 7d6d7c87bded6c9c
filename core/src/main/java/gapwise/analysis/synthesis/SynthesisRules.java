package gapwise.analysis.synthesis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.bayesian.PriorReader;
import gapwise.analysis.moderators.ModeratorRules;
import gapwise.analysis.network.NetworkModel;
import gapwise.analysis.network.NetworkRules;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.pooling.PlacesPart;
import gapwise.effect.Measures;
import gapwise.problem.Problems;
import gapwise.synthesis.pooling.MeanIntervals;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a plan of a synthesis still may not ask: settings that do not go together. Nothing asked for
 * is passed over in silence.
 */
final class SynthesisRules {
  private static final Map<String, Set<String>> COUNT_POOLING =
      Map.of(
          "mantel-haenszel",
          Set.of("odds-ratio", "risk-ratio", "risk-difference", "incidence-rate-ratio"),
          "peto",
          Set.of("odds-ratio"));

  private static final List<String> LIKELIHOODS =
      List.of("restricted-maximum-likelihood", "maximum-likelihood");

  private static final String UNKNOWN_SPREAD = "unknown-spread";

  /** Limits of three levels by Student's t. */
  private static final String OF_CLUSTERS = "t-clusters";

  private final ObjectNode plan;
  private final Problems problems;

  private SynthesisRules(ObjectNode plan, Problems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  /** Notes what is wrong with a plan whose defaults are filled in. */
  static void check(ObjectNode plan, Problems problems) {
    SynthesisRules rules = new SynthesisRules(plan, problems);
    rules.together();
    ModeratorRules.check(plan, problems);
    PriorReader.check(plan, problems);
    PriorReader.checkProbabilities(plan, problems);
    PlacesPart.check(plan, problems);
    rules.threeLevel();
    rules.furtherStudy();
    if (NetworkModel.asked(plan)) {
      NetworkRules.check(plan, problems);
    }
    rules.onlyInMultiverses();
  }

  /** Fields of another task whose plans are else the same. */
  private void onlyInMultiverses() {
    for (String field : List.of("vary", "threshold", "list", "about")) {
      if (plan.has(field)) {
        problems.add(
            field,
            "field-not-for-task",
            "'" + field + "' belongs to the task 'multiverse'; remove it or name that task");
      }
    }
  }

  private void together() {
    String measure = text("measure");
    String model = text("model");
    List<String> scales = Measures.scales(measure);
    if (plan.has("scale") && !scales.isEmpty() && !scales.contains(text("scale"))) {
      problems.add(
          "scale",
          "scale-not-for-measure",
          "'" + text("scale") + "' is no scale for '" + measure + "', which has " + scales);
    }
    if (model.equals("exact-likelihood")) {
      ExactModels.check(plan, problems);
    }
    ExactModels.checkPrediction(plan, problems);
    Set<String> pooled = COUNT_POOLING.get(text("pooling"));
    if (pooled != null && !pooled.contains(measure)) {
      problems.add(
          "pooling",
          "pooling-not-for-measure",
          "'" + text("pooling") + "' does not pool '" + measure + "'");
    }
    intervalForModel(model);
    if (plan.has("subgroup")
        && text("subgroupVariance").equals("common")
        && text("interval").equals("profile-likelihood")) {
      problems.add(
          "interval",
          "interval-not-for-model",
          "profile likelihood limits are made for each group apart; with one common variance take"
              + " 'hartung-knapp' or 'normal'");
    }
  }

  private void intervalForModel(String model) {
    String interval = text("interval");
    boolean exact = model.equals("exact-likelihood");
    boolean known = MeanIntervals.named(interval).isPresent();
    boolean any =
        model.equals("random-effects")
            || (plan.has("moderators")
                && !model.equals("three-level")
                && !NetworkModel.asked(plan));
    boolean ofClusters = model.equals("three-level") && interval.equals(OF_CLUSTERS);
    if (!ofClusters
        && (exact ? !ExactModels.has(interval) : !known || (!any && !interval.equals("normal")))) {
      problems.add(
          "interval",
          "interval-not-for-model",
          "'"
              + interval
              + (known ? "' goes with random effects; '" : "' goes with another model; '")
              + model
              + "' has 'normal'"
              + (exact ? " and 't-k-minus-1'" : "")
              + (model.equals("three-level") ? " and '" + OF_CLUSTERS + "'" : ""));
    }
  }

  private void threeLevel() {
    if (text("moderatorTest").equals(ExactModels.MODERATORS_BY_STUDENT_T)
        && !ExactModels.asked(plan)
        && !NetworkModel.asked(plan)) {
      problems.add(
          "moderatorTest",
          "interval-not-for-model",
          "'"
              + ExactModels.MODERATORS_BY_STUDENT_T
              + "' goes with the models 'exact-likelihood' and 'network'; take another");
    }
    if (!text("model").equals("three-level")) {
      if (text("moderatorTest").equals(OF_CLUSTERS)
          && !ExactModels.asked(plan)
          && !NetworkModel.asked(plan)) {
        problems.add(
            "moderatorTest",
            "interval-not-for-model",
            "'" + OF_CLUSTERS + "' goes with three levels; take 'hartung-knapp' or 'normal'");
      }
      return;
    }
    if (!LIKELIHOODS.contains(text("betweenStudyVariance"))) {
      problems.add(
          "betweenStudyVariance",
          "estimator-not-for-model",
          "'three-level' takes its two variances from one of " + LIKELIHOODS);
    }
    if (plan.path("smallStudyEffects").size() > 0) {
      problems.add(
          "smallStudyEffects",
          "part-not-for-model",
          "tests for small-study effects take effects as independent, which rows of one cluster are"
              + " not; ask them of one row a cluster by 'random-effects'");
    }
    if (plan.path("influence").asBoolean() && plan.has("moderators")) {
      problems.add(
          "influence",
          "part-not-for-model",
          "leaving out rows of clusters goes without moderators; leave one of the two out");
    }
    if (text("moderatorTest").equals("hartung-knapp")) {
      problems.add(
          "moderatorTest",
          "interval-not-for-model",
          "three levels are tested on their clusters; take '" + OF_CLUSTERS + "' or 'normal'");
    }
  }

  /** What a further study, or cluster, is told by where effects have a covariance of their own. */
  private void furtherStudy() {
    String asked = text("predictionInterval");
    boolean structured = text("model").equals("three-level") || NetworkModel.asked(plan);
    boolean unknown = asked.equals(UNKNOWN_SPREAD);
    if (structured && !asked.isEmpty() && !unknown && !asked.equals("t-k-minus-2")) {
      problems.add(
          "predictionInterval",
          "interval-not-for-model",
          "'"
              + asked
              + "' is not made for three levels and networks, which have '"
              + UNKNOWN_SPREAD
              + "' and 't-k-minus-2'");
    }
    if (!structured && unknown && plan.has("moderators")) {
      problems.add(
          "predictionInterval",
          "interval-not-for-model",
          "'"
              + UNKNOWN_SPREAD
              + "' is told of one pooled value or of groups; where moderators predict, take"
              + " 't-k-minus-2', 't-k-minus-1' or 'normal'");
    }
  }

  private String text(String field) {
    return plan.path(field).asText();
  }
}
