package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.rows.SelectionRows;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import gapwise.selection.Selection;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The usual plan for a question, which a person may change before running it. */
public final class QuestionPlan {
  /** Lengths are not among them: a difference of legs may be given with its sign. */
  private static final Set<Unit.Dimension> NEVER_NEGATIVE =
      Set.of(Unit.Dimension.TIME, Unit.Dimension.TIME_PER_LENGTH, Unit.Dimension.VOLUME);

  /** Half and twice the usual scale of the prior of tau for counts. */
  private static final List<Double> OTHER_SCALES = List.of(0.5, 2.0);

  private QuestionPlan() {}

  /**
   * The plan: proportions by the posterior of their exact likelihood, as the simulation in
   * docs/methods/coverage.md advises, with the answer under half and under twice the usual scale of
   * tau; times, indices, costs, volumes and counts for each patient on the log scale because they
   * are skewed and cannot be negative, other means as they are, with random effects; blocks by
   * method. Empty for phases, which are listed and not pooled.
   */
  public static Optional<ObjectNode> of(Question question, String title, boolean byMethod) {
    return of(question, SelectionRows.measure(question), title, byMethod);
  }

  /**
   * The plan for a question whose rows are known. Of what one patient can have several it is for a
   * mean or for a rate for each patient, as most rows can be pooled: rates by their exact
   * likelihood, events over patients, with limits by Student's t, since no prior of them was tried
   * by simulation.
   */
  public static Optional<ObjectNode> of(Selection selection, String title, boolean byMethod) {
    return of(selection.settled(), title, byMethod);
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
      plan.put("model", "bayesian");
      plan.put("likelihood", "exact");
      ArrayNode others = plan.putArray("priorSensitivity");
      OTHER_SCALES.forEach(scale -> others.addObject().put("halfNormal", scale));
    } else if (!measure.equals("mean")) {
      plan.put("scale", "log");
      plan.put("model", "exact-likelihood");
      plan.put("interval", "t-k-minus-1");
      plan.put("predictionInterval", "t-k-minus-2");
    } else {
      plan.put("scale", scale(outcome));
      plan.put("interval", "hartung-knapp-never-narrower");
    }
    if (byMethod) {
      plan.put("subgroup", "method");
      // Each method has the average that its own page has.
      if (measure.equals("mean")) {
        plan.put("subgroupVariance", "separate");
      }
    }
    return Optional.of(plan);
  }

  /**
   * The plan changed to one that pools by effects of each study, for what needs them: moderators,
   * tests of small against large studies. Limits of an average have no bearing there.
   */
  public static ObjectNode byEffects(ObjectNode plan) {
    plan.put("model", "random-effects");
    plan.remove(List.of("likelihood", "priorSensitivity", "interval", "predictionInterval"));
    return plan;
  }

  /**
   * The log for what cannot be negative, so that no interval reaches below 0: log of the mean with
   * the variance of the delta method (Hedges, Gurevitch and Curtis, Ecology 1999;80:1150). A mean
   * of 0 has no log: its series is left out with the reason, which whoever tells the result says.
   */
  private static String scale(Outcome outcome) {
    boolean neverNegative =
        outcome.kind() == Outcome.Kind.COST
            || outcome.kind() == Outcome.Kind.COUNT
            || outcome.unit().map(Unit::dimension).filter(NEVER_NEGATIVE::contains).isPresent();
    return neverNegative ? "log" : "raw";
  }
}
