package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.Drafts;
import gapwise.desk.HandedInDraft;
import gapwise.desk.KeptDraft;
import gapwise.desk.Submission;
import gapwise.evidence.Study;
import gapwise.intake.Intake;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Home;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.extraction.ExtractionAddress;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** A draft handed in, or thrown away. */
public final class HandInPage {
  private static final String DRAFT = PagePaths.DESK + "/{draft}";

  private final Templates templates;
  private final Sites sites;
  private final Drafts drafts;
  private final Intake intake;
  private final StudiesAt studies;
  private final ApartHandIn apart;

  public HandInPage(Templates templates, Sites sites, Home home, StudiesAt studies, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.drafts = home.drafts();
    this.intake = home.intake();
    this.studies = studies;
    this.apart = new ApartHandIn(home, clock);
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(DRAFT + "/hand-in", Right.EXTRACT, this::look);
    routes.post(DRAFT + "/hand-in", Right.EXTRACT, this::handIn);
    routes.post(DRAFT + "/discard", Right.EXTRACT, this::discard);
  }

  /** Beside all that stands in the evidence base, before anything is handed in. */
  private void look(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    show(context, kept, DraftCheck.of(kept.draft(), intake.known()), Optional.empty());
  }

  private void show(Context context, KeptDraft kept, DraftCheck check, Optional<String> refused) {
    templates.show(
        context,
        "desk/HandInPage",
        new HandInView(
            sites.of(say("desk.hand-in"), Place.DESK),
            kept.draft().study(),
            kept.draft().baseVersion(),
            Told.of(kept, check),
            changes(kept.draft(), check),
            refused));
  }

  /** What of the study as it stands would be another; nothing for a new one. */
  private List<VersionsView.Line> changes(Draft draft, DraftCheck check) {
    Optional<Study> before = studies.study(draft.study()).map(KeptStudy::study);
    return draft.reader().isPresent() || before.isEmpty() || check.study().isEmpty()
        ? List.of()
        : VersionsPage.lines(before.get(), check.study().get());
  }

  private void handIn(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    SettledForm by = SettledForm.read(new PostedForm(context));
    Draft draft = kept.draft();
    if (draft.reader().isPresent()) {
      handInApart(context, kept, by);
      return;
    }
    HandedInDraft came = new Submission(intake).handIn(draft, new Intake.As(by.who(), by.why()));
    if (came instanceof HandedInDraft.NotYet notYet) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      show(context, kept, notYet.check(), Optional.of(say("desk.not-yet")));
      return;
    }
    if (came instanceof HandedInDraft.Overtaken) {
      context.status(HttpStatus.CONFLICT);
      show(context, kept, DraftCheck.of(draft, intake.known()), Optional.of(say("desk.overtaken")));
      return;
    }
    drafts.drop(kept.id());
    context.redirect(StudyAddress.of(draft.study()), HttpStatus.SEE_OTHER);
  }

  /** What one of two people extracted becomes no evidence; it waits for the other's. */
  private void handInApart(Context context, KeptDraft kept, SettledForm by) {
    DraftCheck check = DraftCheck.of(kept.draft(), intake.known());
    Optional<String> paper = apart.handIn(kept, check, by);
    if (paper.isEmpty()) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      show(context, kept, check, Optional.of(say("desk.not-yet")));
      return;
    }
    context.redirect(paper.get(), HttpStatus.SEE_OTHER);
  }

  private void discard(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    drafts.drop(kept.id());
    context.redirect(
        kept.draft().reader().isPresent()
            ? ExtractionAddress.of(kept.draft().study())
            : PagePaths.DESK,
        HttpStatus.SEE_OTHER);
  }
}
