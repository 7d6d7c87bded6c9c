package gapwise.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.result.Result;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.Objects;
import java.util.Optional;

/**
 * What is known of a question.
 *
 * @param selection the rows, and what was left out and why
 * @param plan the plan that gives the result; empty where there is nothing to pool
 * @param outcome what came of the plan
 */
public record Answer(
    Selection selection, Optional<ObjectNode> plan, Optional<PlanOutcome> outcome) {
  public Answer {
    Objects.requireNonNull(selection, "selection");
    Objects.requireNonNull(plan, "plan");
    Objects.requireNonNull(outcome, "outcome");
  }

  public Question question() {
    return selection.question();
  }

  /** The result; empty where there is nothing to pool or the plan could not be run. */
  public Optional<Result> result() {
    return outcome
        .filter(PlanOutcome.Done.class::isInstance)
        .map(done -> ((PlanOutcome.Done) done).result());
  }
}
