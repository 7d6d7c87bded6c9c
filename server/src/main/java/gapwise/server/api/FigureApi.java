package gapwise.server.api;

import gapwise.analysis.Outcome;
import gapwise.analysis.Result;
import gapwise.answer.Answer;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.figure.Forest;
import gapwise.figure.ForestDrawing;
import gapwise.figure.ForestTable;
import gapwise.figure.Medium;
import gapwise.figure.Picture;
import gapwise.figure.Png;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.selection.Question;
import gapwise.server.page.Address;
import gapwise.server.page.PooledPage;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A pooled result as files, under the same address parameters as its page. */
final class FigureApi {
  /** Twice the width of the drawing, so that it prints sharp at the width of a page. */
  static final int PNG_PIXELS = 2160;

  private final Answers answers;
  private final String version;

  FigureApi(Answers answers, String version) {
    this.answers = answers;
    this.version = version;
  }

  void addTo(RoutesConfig routes) {
    routes.get(Api.ROOT + "/forest.svg", this::svg);
    routes.get(Api.ROOT + "/forest.png", this::png);
    routes.get(Api.ROOT + "/forest.csv", this::csv);
    routes.get(Api.ROOT + "/plan.json", this::plan);
    routes.get(Api.ROOT + "/result.json", this::result);
  }

  private void svg(Context context) {
    file(context, "image/svg+xml", "forest.svg", page(forest(context)).svg());
  }

  private void png(Context context) {
    Forest forest = forest(context);
    file(context, "image/png", "forest.png", Png.of(page(forest), PNG_PIXELS, forest));
  }

  private void csv(Context context) {
    file(context, "text/csv; charset=utf-8", "forest.csv", ForestTable.of(forest(context)).csv());
  }

  private void plan(Context context) {
    Answer answer = answer(context);
    String plan = answer.plan().orElseThrow(FigureApi::nothing).toPrettyString();
    file(context, "application/json", "plan.json", plan);
  }

  private void result(Context context) {
    Outcome outcome = answer(context).outcome().orElseThrow(FigureApi::nothing);
    if (outcome instanceof Outcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    file(context, "application/json", "result.json", outcome.json().toPrettyString());
  }

  static void file(Context context, String type, String name, String content) {
    file(context, type, name, content.getBytes(StandardCharsets.UTF_8));
  }

  static void file(Context context, String type, String name, byte[] content) {
    context
        .contentType(type)
        .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
        .result(content);
  }

  private static Picture page(Forest forest) {
    return ForestDrawing.draw(forest, Medium.PAGE).get(0);
  }

  private Forest forest(Context context) {
    Answer answer = answer(context);
    Result result = answer.result().orElseThrow(FigureApi::nothing);
    return AnswerForest.of(answer, result, version);
  }

  private Answer answer(Context context) {
    return answers.ask(question(new Address(context.queryParamMap())));
  }

  /** The question of an address that must name an outcome. */
  static Question question(Address address) {
    return PooledPage.question(address)
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
