package gapwise.server.api;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.figure.timeline.Timeline;
import gapwise.place.CaseTimeline;
import gapwise.place.PlacedCases;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import gapwise.server.download.FigureDownloads;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;

/** The timeline of a case as files, under the parameters of its page; nothing is kept. */
final class CaseApi {
  private final PlacedCases cases;
  private final Edition edition;

  CaseApi(Answers answers, Edition edition) {
    this.cases = new PlacedCases(answers);
    this.edition = edition;
  }

  void addTo(Routes routes) {
    FigureDownloads.add(routes, Api.ROOT + "/case", this::timeline);
  }

  private Timeline timeline(Context context) {
    return CaseAddress.read(new Address(context.queryParamMap()))
        .map(cases::place)
        .flatMap(placed -> CaseTimeline.of(placed, edition))
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
