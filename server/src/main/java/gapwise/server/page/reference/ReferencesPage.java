package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.home.Home;
import gapwise.server.job.PostedForm;
import gapwise.server.job.reference.ReferenceFileOut;
import gapwise.server.job.reference.ReferenceJob;
import gapwise.server.job.reference.ReferenceJobs;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.time.LocalDate;

/** Takes files of references in, shows what was found in them, and keeps what a person accepts. */
public final class ReferencesPage {
  private final Templates templates;
  private final Sites sites;
  private final ReferenceJobs jobs;
  private final Home home;
  private final Clock clock;

  public ReferencesPage(
      Templates templates, Sites sites, ReferenceJobs jobs, Home home, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.jobs = jobs;
    this.home = home;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.REFERENCES, Right.EXTRACT, context -> show(context, choosing()));
    routes.post(PagePaths.REFERENCES, Right.EXTRACT, this::start);
    routes.get(
        PagePaths.REFERENCES + "/{id}",
        Right.EXTRACT,
        context -> show(context, following(job(context))));
    routes.get(PagePaths.REFERENCES + "/{id}/{file}", Right.EXTRACT, this::file);
    routes.post(PagePaths.REFERENCES + "/{id}/keep", Right.EXTRACT, this::keep);
  }

  private Site site() {
    return sites.of(say("references.title"), Place.REFERENCES);
  }

  private void show(Context context, ReferencesView view) {
    templates.show(context, "reference/ReferencesPage", view);
  }

  private ReferencesView choosing() {
    return new ReferencesView.Choosing(
        site(), KeptOverview.of(home.references(), home.referenceBase()));
  }

  private ReferencesView following(ReferenceJob job) {
    return new ReferencesView.Following(site(), address(job), job.names(), job.state());
  }

  private static String address(ReferenceJob job) {
    return PagePaths.REFERENCES + "/" + job.id();
  }

  private ReferenceJob job(Context context) {
    return jobs.find(context.pathParam("id")).orElseThrow(ReferencesPage::gone);
  }

  private void start(Context context) throws IOException {
    ReferenceJob job = HandedReferences.start(jobs, new PostedForm(context));
    context.redirect(address(job), HttpStatus.SEE_OTHER);
  }

  /** Keeps what is accepted; a form that is sent twice keeps it once. */
  private void keep(Context context) {
    ReferenceJob job = job(context);
    KeepForm form = KeepForm.read(new PostedForm(context), LocalDate.now(clock));
    if (!jobs.keep(job.id(), form.searches(), form.who())
        && job(context).state().found().isEmpty()) {
      throw new ConflictResponse(say("references.nothing-to-keep"));
    }
    context.redirect(address(job), HttpStatus.SEE_OTHER);
  }

  private void file(Context context) throws IOException {
    ReferenceFileOut file =
        ReferenceFileOut.named(context.pathParam("file")).orElseThrow(ReferencesPage::gone);
    InputStream written =
        jobs.open(context.pathParam("id"), file).orElseThrow(ReferencesPage::gone);
    Attachment.announce(context, file.type(), file.file());
    context.result(written);
  }

  private static NotFoundResponse gone() {
    return new NotFoundResponse(say("references.gone"));
  }
}
