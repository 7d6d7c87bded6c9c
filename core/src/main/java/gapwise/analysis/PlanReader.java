package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.FiniteNumbers;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanSchema;
import gapwise.analysis.plan.Task;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;

/** From JSON to a checked plan: numbers, form, defaults, rules, settings, in this order. */
final class PlanReader {
  private PlanReader() {}

  /**
   * Reads a plan.
   *
   * @throws WrongInputException with everything that is wrong with it
   */
  static Plan read(JsonNode json) {
    refuse(FiniteNumbers.check(json));
    refuse(PlanSchema.check(json));
    Task task = Tasks.named(json.path("task").asText());
    ObjectNode full = Filling.of(task, (ObjectNode) json);
    refuse(task.problems(full));
    return task.read(full);
  }

  private static void refuse(List<Problem> problems) {
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems);
    }
  }
}
