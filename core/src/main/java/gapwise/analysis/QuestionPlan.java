package gapwise.analysis;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.Outcome;
import gapwise.evidence.Unit;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import java.util.Optional;

/** The usual plan for a question, which a person may change before running it. */
public final class QuestionPlan {
  private QuestionPlan() {}

  /**
   * The plan: proportions by their exact likelihood with limits by Student's t, as the simulation
   * in docs/methods/coverage.md advises; times and indices on the log scale because they are skewed
   * and cannot be negative, other means as they are, with random effects; blocks by method. Empty
   * for phases, which are listed and not pooled.
   */
  public static Optional<ObjectNode> of(Question question, String title, boolean byMethod) {
    Outcome outcome = question.outcome();
    if (outcome.kind() == Outcome.Kind.PHASE) {
      return Optional.empty();
    }
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("title", title);
    plan.putObject("source").set("evidence", QuestionJson.write(question));
    String measure = SelectionRows.measure(outcome);
    plan.put("measure", measure);
    if (measure.equals("proportion")) {
      plan.put("scale", "logit");
      plan.put("model", "exact-likelihood");
      plan.put("interval", "t-k-minus-1");
      plan.put("predictionInterval", "t-k-minus-2");
    } else {
      plan.put("scale", scale(outcome));
      plan.put("interval", "hartung-knapp-never-narrower");
    }
    if (byMethod) {
      plan.put("subgroup", "method");
    }
    return Optional.of(plan);
  }

  private static String scale(Outcome outcome) {
    boolean skewed =
        outcome.kind() == Outcome.Kind.COST
            || outcome
                .unit()
                .map(Unit::dimension)
                .filter(
                    dimension ->
                        dimension == Unit.Dimension.TIME
                            || dimension == Unit.Dimension.TIME_PER_LENGTH)
                .isPresent();
    return skewed ? "log" : "raw";
  }
}
