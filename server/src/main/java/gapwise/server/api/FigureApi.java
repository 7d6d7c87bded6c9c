package gapwise.server.api;

import gapwise.analysis.result.Result;
import gapwise.answer.Answer;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.figure.forest.Forest;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import gapwise.server.download.FigureDownloads;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;

/** A pooled result as files, under the same address parameters as its page. */
final class FigureApi {
  private final Answers answers;
  private final Edition edition;

  FigureApi(Answers answers, Edition edition) {
    this.answers = answers;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    FigureDownloads.add(routes, Api.ROOT + "/forest", this::forest);
    routes.get(Api.ROOT + "/plan.json", Right.SEE, this::plan);
    routes.get(Api.ROOT + "/result.json", Right.SEE, this::result);
    routes.get(Api.ROOT + "/methods.txt", Right.SEE, this::methods);
  }

  private void plan(Context context) {
    AnswerFiles.plan(context, "plan.json", answer(context));
  }

  private void result(Context context) {
    AnswerFiles.result(context, "result.json", answer(context), edition);
  }

  private void methods(Context context) {
    AnswerFiles.methods(context, "methods.txt", answer(context), edition);
  }

  private Large<Forest> forest(Context context) {
    Answer answer = answer(context);
    Result result = answer.result().orElseThrow(FigureApi::nothing);
    return AnswerForest.large(answer, result, edition);
  }

  private Answer answer(Context context) {
    Address address = new Address(context.queryParamMap());
    return answers.ask(question(address), QuestionAddress.split(address));
  }

  /** The question of an address that must name an outcome. */
  static Question question(Address address) {
    return QuestionAddress.question(address)
        .orElseThrow(
            () -> wrong("outcome", "missing-field", "Name one outcome, such as outcome=union."));
  }

  static WrongInputException nothing() {
    return wrong(
        "",
        "nothing-selected",
        "No group of patients here can be pooled for this question; widen it.");
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
