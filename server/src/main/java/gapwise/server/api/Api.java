package gapwise.server.api;

import gapwise.analysis.Outcome;
import gapwise.analysis.Runner;
import gapwise.answer.Edition;
import gapwise.budget.Budget;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import gapwise.server.home.Home;
import gapwise.server.job.ImportJobs;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Adds the routes of the API. */
public final class Api {
  /** Where all routes of the API start. */
  public static final String ROOT = "/api/v1";

  private final Home home;
  private final ImportJobs jobs;
  private final Supplier<Edition> edition;
  private final byte[] description = description();

  public Api(Home home, ImportJobs jobs, Supplier<Edition> edition) {
    this.home = home;
    this.jobs = jobs;
    this.edition = edition;
  }

  /** Adds every route. */
  public void addTo(RoutesConfig routes) {
    Runner runner = home.answers().runner();
    routes.post(ROOT + "/syntheses", context -> run(runner, context));
    new StudiesApi(home.search(), home.base()).addTo(routes);
    new FigureApi(home.answers(), edition).addTo(routes);
    new BySizeApi(home.answers(), edition).addTo(routes);
    new FunnelApi(home.answers(), edition).addTo(routes);
    new CaseApi(home.answers(), edition).addTo(routes);
    new ClaimApi(home.claims()).addTo(routes);
    new PlanFigureApi(home.answers(), edition).addTo(routes);
    new ImportsApi(jobs).addTo(routes);
    routes.get(ROOT + "/vocabularies", context -> Json.answer(context, Vocabularies.json()));
    routes.get(
        ROOT + "/openapi.json",
        context -> context.contentType("application/json").result(description));
  }

  private static void run(Runner runner, Context context) {
    Outcome outcome = withinBudget(() -> runner.run(context.body(), Optional.empty()));
    if (outcome instanceof Outcome.Wrong wrong) {
      ProblemDetails.answer(
          context,
          HttpStatus.UNPROCESSABLE_CONTENT,
          "The plan or its data are wrong.",
          wrong.problems());
    } else {
      Json.answer(context, outcome.json());
    }
  }

  private static Outcome withinBudget(Supplier<Outcome> run) {
    try {
      return Work.within(Budget.STANDARD).join(run);
    } catch (WorkStoppedException stopped) {
      return new Outcome.Wrong(List.of(stopped.problem()));
    }
  }

  private static byte[] description() {
    try (InputStream stream = Api.class.getResourceAsStream("openapi.json")) {
      if (stream == null) {
        throw new IllegalStateException("missing resource openapi.json");
      }
      return stream.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
