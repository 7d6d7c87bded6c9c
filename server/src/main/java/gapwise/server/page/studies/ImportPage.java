package gapwise.server.page.studies;

import gapwise.answer.StudyAddress;
import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
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
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

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
    routes.get(PagePaths.IMPORT, context -> show(context, choosing(context)));
    routes.post(PagePaths.IMPORT, this::start);
    routes.get(PagePaths.IMPORT + "/template.xlsx", ImportPage::workbook);
    routes.get(PagePaths.IMPORT + "/template/{sheet}", ImportPage::sheet);
    routes.get(PagePaths.IMPORT + "/{id}", context -> show(context, following(job(context))));
    routes.post(PagePaths.IMPORT + "/{id}", this::acknowledge);
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
    return done.studies().stream()
        .limit(LINKS_SHOWN)
        .flatMap(id -> studies.apply(id).stream())
        .map(study -> new ImportView.Link(StudyAddress.of(study.id()), study.citation().label()))
        .toList();
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
    ImportJob job = HandedIn.start(jobs, new PostedForm(context), Set.of());
    context.redirect(address(job), HttpStatus.SEE_OTHER);
  }

  private void acknowledge(Context context) {
    ImportJob job = job(context);
    PostedForm form = new PostedForm(context);
    Set<String> seen = new HashSet<>(form.values("seen"));
    if (job.state() instanceof ImportState.Doubtful doubtful) {
      List<String> kinds = form.values("kind");
      doubtful.kinds().stream()
          .filter(kind -> kinds.contains(kind.code()))
          .flatMap(kind -> kind.all().stream())
          .forEach(noted -> noted.key().ifPresent(seen::add));
    }
    jobs.acknowledge(job.id(), seen);
    context.redirect(address(job), HttpStatus.SEE_OTHER);
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
