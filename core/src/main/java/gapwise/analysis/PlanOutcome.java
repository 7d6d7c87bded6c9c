package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.result.Origin;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.ResultJson;
import gapwise.problem.Problem;
import java.util.List;

/** What came of a plan: a result, or what is wrong with it. */
public sealed interface PlanOutcome {
  /** The result, or {@code {"problems":[...]}}, in a fixed order of fields. */
  ObjectNode json();

  /** The same, a result with what made it. */
  ObjectNode json(Origin origin);

  /** Done; what could not be estimated stands in the result's warnings. */
  record Done(Result result) implements PlanOutcome {
    @Override
    public ObjectNode json() {
      return ResultJson.of(result);
    }

    @Override
    public ObjectNode json(Origin origin) {
      return ResultJson.of(result, origin);
    }
  }

  /**
   * The plan or its data are wrong.
   *
   * @param problems at least one
   */
  record Wrong(List<Problem> problems) implements PlanOutcome {
    public Wrong {
      problems = List.copyOf(problems);
    }

    @Override
    public ObjectNode json() {
      return ResultJson.of(problems);
    }

    @Override
    public ObjectNode json(Origin origin) {
      return json();
    }
  }
}
