package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.rows.SelectionRows;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import gapwise.selection.Selection;
import java.util.List;
import java.util.Optional;

/** The usual plan for a question, which a person may change before running it. */
public final class QuestionPlan {
  private QuestionPlan() {}

  /**
   * The plan: proportions and rates by the posterior of their exact likelihood; means by that of
   * random effects, on the log scale what cannot be negative, else as they are; all with the usual
   * priors, as the simulation in docs/methods/coverage.md advises, and with the answer under half
   * and under twice the usual scale of tau; blocks by method. Empty for phases, which are listed
   * and not pooled.
   */
  public static Optional<ObjectNode> of(Question question, String title, boolean byMethod) {
    return of(question, SelectionRows.measure(question), title, byMethod);
  }

  /**
   * The plan for a question whose rows are known. Of what one patient can have several it is for a
   * mean or for a rate for each patient, events over patients, as most rows can be pooled.
   */
  public static Optional<ObjectNode> of(Selection selection, String title, boolean byMethod) {
    return of(selection.settled(), title, byMethod);
  }

  /** The same for the groups of one method, each word of a detail pooled by itself. */
  public static Optional<ObjectNode> splitBy(Selection selection, String title, DetailKind detail) {
    return of(selection, title, false)
        .map(plan -> plan.put("subgroup", detail.code()).put("subgroupBlanks", "apart"));
  }

  private static Optional<ObjectNode> of(
      Question question, String measure, String title, boolean byMethod) {
    Outcome outcome = question.outcome();
    if (outcome.kind() == Outcome.Kind.PHASE) {
      return Optional.empty();
    }
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("title", title);
    plan.putObject("source").set("evidence", QuestionJson.write(question));
    plan.put("measure", measure);
    if (measure.equals("proportion")) {
      plan.put("scale", "logit");
      posterior(plan, "halfNormal", 0.5, 2);
      plan.put("likelihood", "exact");
    } else if (!measure.equals("mean")) {
      plan.put("scale", "log");
      posterior(plan, "halfNormal", 0.5, 2);
      plan.put("likelihood", "exact");
    } else if (outcome.isNeverNegative()) {
      // Log of the mean with the variance of the delta method (Hedges, Gurevitch and Curtis,
      // Ecology
      // 1999;80:1150). A mean of 0 has no log: its series is left out with the reason, which
      // whoever
      // tells the result says.
      plan.put("scale", "log");
      posterior(plan, "halfNormal", 0.25, 1);
    } else {
      plan.put("scale", "raw");
      posterior(plan, "halfNormalOfStandardDeviation", 0.5, 2);
    }
    if (byMethod) {
      plan.put("subgroup", "method");
    }
    return Optional.of(plan);
  }

  /**
   * The plan changed to one that pools by effects of each study, for what needs them: tests of
   * small against large studies. Limits of an average have no bearing there.
   */
  public static ObjectNode byEffects(ObjectNode plan) {
    plan.put("model", "random-effects");
    plan.remove(List.of("likelihood", "priorSensitivity", "interval", "predictionInterval"));
    return plan;
  }

  /**
   * The plan changed to one that can take moderators: counts by their own likelihood, so that
   * nothing is added to them; else by effects of each study.
   */
  public static ObjectNode forModerators(ObjectNode plan) {
    byEffects(plan);
    if (!plan.path("measure").asText().equals("mean")) {
      plan.put("model", "exact-likelihood");
      plan.put("predictionInterval", "t-k-minus-2");
    }
    return plan;
  }

  /**
   * A plan with moderators by effects of series, half events added where nothing or everything
   * happened; empty where it is so already.
   */
  public static Optional<ObjectNode> moderatedByEffects(ObjectNode plan) {
    if (!plan.path("model").asText().equals("exact-likelihood")) {
      return Optional.empty();
    }
    ObjectNode other = plan.deepCopy();
    other.put("model", "random-effects");
    other.remove("predictionInterval");
    return Optional.of(other);
  }

  /**
   * By the posterior under the usual prior, with the answer under two others of tau.
   *
   * @param prior its word
   * @param half half of the usual scale
   * @param twice twice of it
   */
  private static void posterior(ObjectNode plan, String prior, double half, double twice) {
    plan.put("model", "bayesian");
    ArrayNode others = plan.putArray("priorSensitivity");
    others.addObject().put(prior, half);
    others.addObject().put(prior, twice);
  }
}
