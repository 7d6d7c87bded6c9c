package gapwise.server.api;

import gapwise.analysis.PlanOutcome;
import gapwise.answer.Answer;
import gapwise.problem.WrongInputException;
import gapwise.server.download.Attachment;
import io.javalin.http.Context;

/** The plan behind an answer and its result, as files. */
final class AnswerFiles {
  private static final String JSON = "application/json";

  private AnswerFiles() {}

  static void plan(Context context, String name, Answer answer) {
    String plan = answer.plan().orElseThrow(FigureApi::nothing).toPrettyString();
    Attachment.send(context, JSON, name, plan);
  }

  /**
   * Sends the result.
   *
   * @throws WrongInputException with what the analysis found wrong, where there is no result
   */
  static void result(Context context, String name, Answer answer) {
    PlanOutcome outcome = answer.outcome().orElseThrow(FigureApi::nothing);
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    Attachment.send(context, JSON, name, outcome.json().toPrettyString());
  }
}
