package gapwise.server.api;

import gapwise.analysis.PlanOutcome;
import gapwise.answer.Edition;
import gapwise.server.account.Right;
import gapwise.server.home.Evidence;
import gapwise.server.home.Origins;
import gapwise.server.job.ImportJobs;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.function.Supplier;

/** Adds the routes of the API. */
public final class Api {
  /** Where all routes of the API start. */
  public static final String ROOT = "/api/v1";

  private static final byte[] DESCRIPTION = description();

  private final Evidence evidence;
  private final ImportJobs jobs;
  private final Supplier<Optional<String>> notice;
  private final Edition edition;

  /**
   * @param notice what must be known of the state that is shown; empty for nothing
   */
  public Api(
      Evidence evidence, ImportJobs jobs, Supplier<Optional<String>> notice, Edition edition) {
    this.evidence = evidence;
    this.jobs = jobs;
    this.notice = notice;
    this.edition = edition;
  }

  /** Adds every route. */
  public void addTo(Routes routes) {
    SentPlans plans = new SentPlans(evidence.answers());
    routes.post(ROOT + "/syntheses", Right.SEE, context -> run(plans, context));
    routes.post(ROOT + "/methods", Right.SEE, context -> tell(plans, context));
    new StudiesApi(evidence.search(), evidence.studies()).addTo(routes);
    new FigureApi(evidence.answers(), edition).addTo(routes);
    new BySizeApi(evidence.answers(), edition).addTo(routes);
    new FunnelApi(evidence.answers(), edition).addTo(routes);
    new CourseApi(evidence.courses(), edition).addTo(routes);
    new CaseApi(evidence.answers(), edition).addTo(routes);
    new ClaimApi(evidence.claims(), edition).addTo(routes);
    new OptionsApi(evidence.options()).addTo(routes);
    new ChoiceApi(evidence.options(), evidence.averages(), edition).addTo(routes);
    new PlanFigureApi(plans, edition).addTo(routes);
    new ImportsApi(jobs, notice).addTo(routes);
    routes.get(
        ROOT + "/vocabularies", Right.SEE, context -> Json.answer(context, Vocabularies.json()));
    routes.get(
        ROOT + "/openapi.json",
        Right.SEE,
        context -> context.contentType("application/json").result(DESCRIPTION));
  }

  private void run(SentPlans plans, Context context) {
    PlanOutcome outcome = plans.run(context.body()).outcome();
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      refuse(context, wrong);
    } else {
      Json.answer(context, outcome.json(Origins.of(edition)));
    }
  }

  /** The methods of a plan in words, told from its result. */
  private void tell(SentPlans plans, Context context) {
    PlanOutcome outcome = plans.run(context.body()).outcome();
    if (outcome instanceof PlanOutcome.Done done) {
      context.contentType(AnswerFiles.TEXT).result(AnswerFiles.methods(done, edition));
    } else {
      refuse(context, (PlanOutcome.Wrong) outcome);
    }
  }

  private static void refuse(Context context, PlanOutcome.Wrong wrong) {
    ProblemDetails.answer(
        context,
        HttpStatus.UNPROCESSABLE_CONTENT,
        "The plan or its data are wrong.",
        wrong.problems());
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
