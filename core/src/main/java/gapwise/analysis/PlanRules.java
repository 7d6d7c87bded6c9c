package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.Measures;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.synthesis.pooling.MeanIntervals;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a plan of the right form still may not ask: settings that do not go together. Nothing asked
 * for is passed over in silence.
 */
final class PlanRules {
  private static final Map<String, Set<String>> COUNT_POOLING =
      Map.of(
          "mantel-haenszel",
          Set.of("odds-ratio", "risk-ratio", "risk-difference", "incidence-rate-ratio"),
          "peto",
          Set.of("odds-ratio"));

  private static final List<String> LIKELIHOODS =
      List.of("restricted-maximum-likelihood", "maximum-likelihood");

  /** Nearer to 0 and 1 limits are lost in rounding; no report uses such levels. */
  private static final double LEAST_LEVEL = 0.01;

  private static final double MOST_LEVEL = 0.999999;

  private final ObjectNode plan;
  private final Problems problems = new Problems();

  private PlanRules(ObjectNode plan) {
    this.plan = plan;
  }

  /** What is wrong with a plan whose defaults are filled in. */
  static List<Problem> check(ObjectNode plan) {
    PlanRules rules = new PlanRules(plan);
    String task = rules.text("task");
    rules.level();
    if (task.equals("interval")) {
      rules.intervals();
    } else if (task.equals("agreement")) {
      rules.problems.addAll(AgreementRules.check(plan));
    } else if (task.equals("reconstruct-curve") || task.equals("survival")) {
      rules.problems.addAll(CurveRules.check(plan));
    } else if (task.equals("patients-with-summaries")) {
      rules.problems.addAll(PatientsPlan.check(plan));
    } else if (task.equals("trial")) {
      rules.problems.addAll(TrialPlan.check(plan));
    } else if (task.equals("synthesis")) {
      rules.together();
      rules.problems.addAll(ModeratorRules.check(plan));
      rules.models();
      if (rules.text("model").equals("network")) {
        rules.problems.addAll(NetworkRules.check(plan));
      }
      rules.problems.addAll(MultiverseRules.onlyThere(plan));
    } else if (task.equals("multiverse")) {
      rules.problems.addAll(MultiverseRules.check(plan));
    }
    return rules.problems.list();
  }

  private void level() {
    double level = plan.get("level").asDouble();
    if (level < LEAST_LEVEL || level > MOST_LEVEL) {
      problems.add(
          "level",
          "out-of-range",
          "found "
              + level
              + ", expected a share such as 0.95, from "
              + LEAST_LEVEL
              + " to "
              + MOST_LEVEL);
    }
  }

  private void intervals() {
    boolean rate = text("measure").equals("incidence-rate");
    for (int i = 0; i < plan.get("methods").size(); i++) {
      String method = plan.get("methods").get(i).asText();
      if (method.equals("exact-poisson") != rate) {
        problems.add(
            "methods[" + i + "]",
            "method-not-for-measure",
            "'" + method + "' makes no interval for the measure '" + text("measure") + "'");
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
        model.equals("random-effects") || (plan.has("moderators") && !model.equals("three-level"));
    if (exact ? !ExactModels.has(interval) : !known || (!any && !interval.equals("normal"))) {
      problems.add(
          "interval",
          "interval-not-for-model",
          "'"
              + interval
              + (known ? "' goes with random effects; '" : "' goes with an exact likelihood; '")
              + model
              + "' has 'normal'"
              + (exact ? " and 't-k-minus-1'" : ""));
    }
  }

  private void threeLevel() {
    if (!text("model").equals("three-level")) {
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
          "three levels are tested against the normal distribution; take 'normal'");
    }
  }

  private void models() {
    PriorReader.check(plan, problems);
    ProbabilityStatements.check(plan, problems);
    PlacesPart.check(plan, problems);
    threeLevel();
  }

  private String text(String field) {
    return plan.path(field).asText();
  }
}
