package gapwise.server.api;

import gapwise.analysis.Outcome;
import gapwise.answer.Answers;
import gapwise.answer.LengthAnswer;
import gapwise.figure.Bubble;
import gapwise.figure.BubbleDrawing;
import gapwise.figure.BubbleTable;
import gapwise.figure.Medium;
import gapwise.figure.Picture;
import gapwise.figure.Png;
import gapwise.problem.WrongInputException;
import gapwise.server.page.Address;
import gapwise.server.page.BySizePage;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** An outcome over the length of missing bone as files, under the parameters of its page. */
final class BySizeApi {
  private final Answers answers;
  private final String version;

  BySizeApi(Answers answers, String version) {
    this.answers = answers;
    this.version = version;
  }

  void addTo(RoutesConfig routes) {
    routes.get(Api.ROOT + "/by-size.svg", this::svg);
    routes.get(Api.ROOT + "/by-size.png", this::png);
    routes.get(Api.ROOT + "/by-size.csv", this::csv);
    routes.get(Api.ROOT + "/by-size-plan.json", this::plan);
    routes.get(Api.ROOT + "/by-size-result.json", this::result);
  }

  private void svg(Context context) {
    FigureApi.file(context, "image/svg+xml", "by-size.svg", page(bubble(context)).svg());
  }

  private void png(Context context) {
    Bubble bubble = bubble(context);
    FigureApi.file(
        context, "image/png", "by-size.png", Png.of(page(bubble), FigureApi.PNG_PIXELS, bubble));
  }

  private void csv(Context context) {
    String csv = new BubbleTable(bubble(context)).csv();
    FigureApi.file(context, "text/csv; charset=utf-8", "by-size.csv", csv);
  }

  private void plan(Context context) {
    String plan = asked(context).answer().plan().orElseThrow(FigureApi::nothing).toPrettyString();
    FigureApi.file(context, "application/json", "by-size-plan.json", plan);
  }

  private void result(Context context) {
    Outcome outcome = asked(context).answer().outcome().orElseThrow(FigureApi::nothing);
    if (outcome instanceof Outcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    String json = outcome.json().toPrettyString();
    FigureApi.file(context, "application/json", "by-size-result.json", json);
  }

  private static Picture page(Bubble bubble) {
    return BubbleDrawing.draw(bubble, Medium.PAGE);
  }

  private Bubble bubble(Context context) {
    return asked(context).figure(version).orElseThrow(FigureApi::nothing);
  }

  private LengthAnswer asked(Context context) {
    Address address = new Address(context.queryParamMap());
    return answers.byLength(FigureApi.question(address), BySizePage.shape(address));
  }
}
