package gapwise.server.api;

import gapwise.answer.Answers;
import gapwise.figure.Medium;
import gapwise.figure.Picture;
import gapwise.figure.Png;
import gapwise.figure.Timeline;
import gapwise.figure.TimelineDrawing;
import gapwise.figure.TimelineTable;
import gapwise.place.CaseTimeline;
import gapwise.place.PlacedCases;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.page.Address;
import gapwise.server.page.CaseAddress;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;

/** The timeline of a case as files, under the parameters of its page; nothing is kept. */
final class CaseApi {
  private final PlacedCases cases;
  private final String version;

  CaseApi(Answers answers, String version) {
    this.cases = new PlacedCases(answers);
    this.version = version;
  }

  void addTo(RoutesConfig routes) {
    routes.get(Api.ROOT + "/case.svg", this::svg);
    routes.get(Api.ROOT + "/case.png", this::png);
    routes.get(Api.ROOT + "/case.csv", this::csv);
  }

  private void svg(Context context) {
    FigureApi.file(context, "image/svg+xml", "case.svg", page(timeline(context)).svg());
  }

  private void png(Context context) {
    Timeline timeline = timeline(context);
    byte[] picture = Png.of(page(timeline), FigureApi.PNG_PIXELS, timeline.texts());
    FigureApi.file(context, "image/png", "case.png", picture);
  }

  private void csv(Context context) {
    String csv = new TimelineTable(timeline(context)).csv();
    FigureApi.file(context, "text/csv; charset=utf-8", "case.csv", csv);
  }

  private static Picture page(Timeline timeline) {
    return TimelineDrawing.draw(timeline, Medium.PAGE);
  }

  private Timeline timeline(Context context) {
    return CaseAddress.read(new Address(context.queryParamMap()))
        .map(cases::place)
        .flatMap(placed -> CaseTimeline.of(placed, version))
        .orElseThrow(
            () ->
                new WrongInputException(
                    List.of(
                        new Problem(
                            "",
                            "nothing-to-draw",
                            "Give a milestone with its clock, such as union=9 and"
                                + " union-from=frame-on, or a phase such as"
                                + " phase-1=in-frame and duration-1=10."))));
  }
}
