package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.exchange.Warning;
import gapwise.intake.Compared;
import gapwise.problem.Problem;
import gapwise.server.account.Right;
import gapwise.server.job.ChangedStudy;
import gapwise.server.job.HandedIn;
import gapwise.server.job.ImportJob;
import gapwise.server.job.ImportJobs;
import gapwise.server.job.ImportState;
import gapwise.server.job.PostedForm;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Imports of filled templates: hand in, then ask how far it is. */
final class ImportsApi {
  private final ImportJobs jobs;
  private final Supplier<Optional<String>> notice;

  /**
   * @param notice what must be known of the state that is shown; empty for nothing
   */
  ImportsApi(ImportJobs jobs, Supplier<Optional<String>> notice) {
    this.jobs = jobs;
    this.notice = notice;
  }

  void addTo(Routes routes) {
    routes.post(Api.ROOT + "/imports", Right.EXTRACT, this::start);
    routes.get(Api.ROOT + "/imports/{id}", Right.EXTRACT, this::show);
  }

  private void start(Context context) throws IOException {
    PostedForm form = new PostedForm(context);
    ImportJob job = HandedIn.start(jobs, form, agreed(form));
    context.status(HttpStatus.ACCEPTED).header("Location", Api.ROOT + "/imports/" + job.id());
    Json.answer(context, json(job));
  }

  private static ImportJob.Agreed agreed(PostedForm form) {
    return new ImportJob.Agreed(
        new HashSet<>(form.values("acknowledged")),
        new HashSet<>(form.values("replace")),
        new HashSet<>(form.values("leave")));
  }

  private void show(Context context) {
    String id = context.pathParam("id");
    ImportJob job =
        jobs.find(id)
            .orElseThrow(() -> new NotFoundResponse("There is no import '" + id + "' any more."));
    Json.answer(context, json(job));
  }

  private ObjectNode json(ImportJob job) {
    ObjectNode json = Json.object();
    json.put("id", job.id());
    json.put("state", job.state().code());
    if (job.state() instanceof ImportState.Reading reading) {
      json.put("rows", reading.rows());
    } else if (job.state() instanceof ImportState.Wrong wrong) {
      problems(json.putArray("problems"), wrong.problems());
    } else if (job.state() instanceof ImportState.Asking asking) {
      compared(json.putObject("compared"), asking.compared());
      ArrayNode warnings = json.putArray("warnings");
      for (Warning warning : asking.open()) {
        warnings.add(problem(warning.problem()).put("key", warning.key()));
      }
      ArrayNode changes = json.putArray("changes");
      asking.changes().forEach(change -> changes.add(change(change)));
    } else if (job.state() instanceof ImportState.Done done) {
      notice.get().ifPresent(words -> json.put("notice", words));
      json.put("saved", done.record().saved());
      json.put("unchanged", done.record().unchanged());
      compared(json.putObject("compared"), done.compared());
      ArrayNode ids = json.putArray("studies");
      done.compared().all().forEach(ids::add);
      ArrayNode proposals = json.putArray("toBeConfirmed");
      done.proposals().stream()
          .flatMap(kind -> kind.all().stream())
          .forEach(noted -> proposals.add(problem(noted.problem())));
    } else if (job.state() instanceof ImportState.Failed failed) {
      json.put("message", failed.message());
    }
    return json;
  }

  private static void compared(ObjectNode json, Compared compared) {
    compared.fresh().forEach(json.putArray("new")::add);
    compared.same().forEach(json.putArray("same")::add);
    compared.changed().forEach(json.putArray("changed")::add);
    compared.mended().forEach(json.putArray("mended")::add);
    compared.left().forEach(json.putArray("left")::add);
  }

  /** A change with its first fields; how many there are in all stands beside them. */
  private static ObjectNode change(ChangedStudy change) {
    ObjectNode json =
        Json.object()
            .put("key", change.key())
            .put("study", change.id())
            .put("version", change.standing().version())
            .put("withdrawn", change.standing().withdrawn())
            .put("fields", change.fields());
    ArrayNode lines = json.putArray("differences");
    for (ChangedStudy.Line line : change.lines()) {
      lines.add(
          Json.object()
              .put("sheet", line.sheet())
              .put("row", line.row())
              .put("field", line.field())
              .put("before", line.before())
              .put("after", line.after()));
    }
    return json;
  }

  private static void problems(ArrayNode list, List<Problem> problems) {
    problems.forEach(problem -> list.add(problem(problem)));
  }

  private static ObjectNode problem(Problem problem) {
    return Json.object()
        .put("where", problem.where())
        .put("code", problem.code())
        .put("study", problem.about())
        .put("message", problem.message());
  }
}
