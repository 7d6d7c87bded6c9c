package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.answer.Answer;
import gapwise.answer.Edition;
import gapwise.problem.WrongInputException;
import gapwise.report.MethodsParagraph;
import gapwise.server.download.Attachment;
import gapwise.server.home.Origins;
import io.javalin.http.Context;

/** The plan behind an answer, its result, and its methods in words, as files. */
final class AnswerFiles {
  /** The type of a text. */
  static final String TEXT = "text/plain; charset=utf-8";

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
  static void result(Context context, String name, Answer answer, Edition edition) {
    ObjectNode json = done(answer).json(Origins.of(edition));
    Attachment.send(context, JSON, name, json.toPrettyString());
  }

  /**
   * Sends the methods in words.
   *
   * @throws WrongInputException as for the result
   */
  static void methods(Context context, String name, Answer answer, Edition edition) {
    Attachment.send(context, TEXT, name, methods(done(answer), edition));
  }

  /** The methods of a result in words. */
  static String methods(PlanOutcome.Done done, Edition edition) {
    return MethodsParagraph.of(done.result(), Origins.of(edition)).text();
  }

  private static PlanOutcome.Done done(Answer answer) {
    PlanOutcome outcome = answer.outcome().orElseThrow(FigureApi::nothing);
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    return (PlanOutcome.Done) outcome;
  }
}
