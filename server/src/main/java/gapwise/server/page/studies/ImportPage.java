package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.intake.Compared;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.job.ChangedStudy;
import gapwise.server.job.HandedIn;
import gapwise.server.job.ImportJob;
import gapwise.server.job.ImportJobs;
import gapwise.server.job.ImportState;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Takes filled templates in, tells everything that is wrong, and stores all or nothing. */
public final class ImportPage {
  private static final int LINKS_SHOWN = 100;
  private static final String WORKBOOK =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

  private final Templates templates;
  private final Sites sites;
  private final ImportJobs jobs;
  private final Function<String, Optional<Study>> studies;

  public ImportPage(
      Templates templates,
      Sites sites,
      ImportJobs jobs,
      Function<String, Optional<Study>> studies) {
    this.templates = templates;
    this.sites = sites;
    this.jobs = jobs;
    this.studies = studies;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.IMPORT, Right.EXTRACT, context -> show(context, choosing(context)));
    routes.post(PagePaths.IMPORT, Right.EXTRACT, this::start);
    routes.get(PagePaths.IMPORT + "/template.xlsx", Right.SEE, ImportPage::workbook);
    routes.get(PagePaths.IMPORT + "/template/{sheet}", Right.SEE, ImportPage::sheet);
    routes.get(
        PagePaths.IMPORT + "/{id}",
        Right.EXTRACT,
        context -> show(context, following(job(context))));
    routes.get(PagePaths.IMPORT + "/{id}/changes.csv", Right.EXTRACT, this::changes);
    routes.post(PagePaths.IMPORT + "/{id}", Right.EXTRACT, this::agree);
  }

  private void show(Context context, ImportView view) {
    templates.show(context, "studies/ImportPage", view);
  }

  private ImportView choosing(Context context) {
    Address address = new Address(context.queryParamMap());
    return new ImportView.Choosing(sites.of("Add studies", Place.ADD, address), Export.sheets());
  }

  private ImportView following(ImportJob job) {
    return new ImportView.Following(
        sites.of("Add studies", Place.ADD),
        address(job),
        job.names(),
        job.state(),
        links(job.state()));
  }

  private List<ImportView.Link> links(ImportState state) {
    if (!(state instanceof ImportState.Done done)) {
      return List.of();
    }
    Compared compared = done.compared();
    return Stream.of(
            links(compared.fresh(), say("import.was-new")),
            links(compared.changed(), say("import.was-other")),
            links(compared.mended(), say("import.was-damaged")),
            links(compared.left(), say("import.was-left")),
            links(compared.same(), say("import.was-same")))
        .flatMap(each -> each)
        .limit(LINKS_SHOWN)
        .toList();
  }

  private Stream<ImportView.Link> links(List<String> ids, String was) {
    return ids.stream()
        .limit(LINKS_SHOWN)
        .flatMap(id -> studies.apply(id).stream())
        .map(
            study ->
                new ImportView.Link(StudyAddress.of(study.id()), study.citation().label(), was));
  }

  private static String address(ImportJob job) {
    return PagePaths.IMPORT + "/" + job.id();
  }

  private ImportJob job(Context context) {
    return jobs.find(context.pathParam("id"))
        .orElseThrow(
            () ->
                new NotFoundResponse(
                    "There is no such import any more. What it stored is in the studies."));
  }

  private void start(Context context) throws IOException {
    ImportJob job = HandedIn.start(jobs, new PostedForm(context), ImportJob.Agreed.NOTHING);
    context.redirect(address(job), HttpStatus.SEE_OTHER);
  }

  private void agree(Context context) {
    ImportJob job = job(context);
    PostedForm form = new PostedForm(context);
    if (job.state() instanceof ImportState.Asking asking) {
      Set<String> changes = changes(asking.changes(), form);
      jobs.agree(
          job.id(),
          new ImportJob.Agreed(doubts(asking, form), changes, left(asking, changes, form)));
    }
    context.redirect(address(job), HttpStatus.SEE_OTHER);
  }

  private static Set<String> doubts(ImportState.Asking asking, PostedForm form) {
    Set<String> seen = new HashSet<>(form.values("seen"));
    List<String> kinds = form.values("kind");
    asking.kinds().stream()
        .filter(kind -> kinds.contains(kind.code()))
        .flatMap(kind -> kind.all().stream())
        .forEach(noted -> noted.key().ifPresent(seen::add));
    return seen;
  }

  /** The changes that were ticked, one by one or all that were told together. */
  private static Set<String> changes(List<ChangedStudy> asked, PostedForm form) {
    Set<String> keys = asked.stream().map(ChangedStudy::key).collect(Collectors.toSet());
    Set<String> ticked = new HashSet<>(form.values("change"));
    ticked.retainAll(keys);
    if (form.first("all-changes").equals(ImportView.all(asked))) {
      ticked.addAll(keys);
    }
    return ticked;
  }

  /** The studies that the person leaves as they stand. */
  private static Set<String> left(ImportState.Asking asking, Set<String> changes, PostedForm form) {
    return form.first("others").equals("leave")
        ? asking.changes().stream()
            .filter(one -> !changes.contains(one.key()))
            .map(ChangedStudy::id)
            .collect(Collectors.toSet())
        : Set.of();
  }

  /** Everything that an import would change, as it was found. */
  private void changes(Context context) throws IOException {
    ImportJob job = job(context);
    if (!(job.state() instanceof ImportState.Asking) || !Files.exists(job.changes())) {
      throw new NotFoundResponse(say("import.no-changes"));
    }
    Attachment.announce(context, "text/csv; charset=utf-8", "import-changes.csv");
    context.result(Files.newInputStream(job.changes()));
  }

  private static void workbook(Context context) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Export.workbook(List.of(), bytes);
    Attachment.send(context, WORKBOOK, "gapwise-template.xlsx", bytes.toByteArray());
  }

  private static void sheet(Context context) throws IOException {
    String file = context.pathParam("sheet");
    String sheet = file.replaceFirst("\\.csv$", "");
    if (!file.endsWith(".csv") || !Export.sheets().contains(sheet)) {
      throw new NotFoundResponse("There is no template '" + file + "'.");
    }
    StringBuilder text = new StringBuilder();
    Export.csv(List.of(), sheet, text);
    Attachment.send(context, "text/csv; charset=utf-8", file, text.toString());
  }
}
