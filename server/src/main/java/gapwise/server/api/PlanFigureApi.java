package gapwise.server.api;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.result.Result;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.ResultFigures;
import gapwise.figure.Figure;
import gapwise.figure.file.FileKind;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.FigureAddress;
import gapwise.server.download.FigureDownloads;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The figures of any plan as files: the plan is sent, the figure comes back. {@code figure} in the
 * address names one where a result has several.
 */
final class PlanFigureApi {
  private final SentPlans plans;
  private final Edition edition;

  PlanFigureApi(SentPlans plans, Edition edition) {
    this.plans = plans;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    for (FileKind kind : FileKind.values()) {
      routes.post(Api.ROOT + "/figure" + kind.ending(), Right.SEE, context -> send(context, kind));
    }
  }

  private void send(Context context, FileKind kind) {
    Address address = new Address(context.queryParamMap());
    Answers.Ran ran = plans.run(context.body());
    if (ran.outcome() instanceof PlanOutcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    Result result = ((PlanOutcome.Done) ran.outcome()).result();
    Map<String, Figure> figures = ResultFigures.of(result, ran.answer(), edition);
    String name =
        Optional.of(address.first("figure"))
            .filter(asked -> !asked.isEmpty())
            .or(() -> figures.keySet().stream().findFirst())
            .filter(figures::containsKey)
            .orElseThrow(() -> none(address.first("figure"), figures));
    Figure figure = Objects.requireNonNull(figures.get(name), name);
    FigureDownloads.send(context, kind, name, figure, FigureAddress.wish(address));
  }

  private static WrongInputException none(String asked, Map<String, Figure> figures) {
    String message =
        figures.isEmpty()
            ? "The result of this plan has nothing to draw; forest plots need studies, funnels the"
                + " setting 'funnel', curves a task about times to an event."
            : "Found '" + asked + "'; this result has " + String.join(", ", figures.keySet()) + ".";
    return new WrongInputException(List.of(new Problem("figure", "no-such-figure", message)));
  }
}
