package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ExtractionBase;
import gapwise.desk.AgreedDraft;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.HandedInDraft;
import gapwise.desk.Noted;
import gapwise.desk.SettledDoubt;
import gapwise.desk.Submission;
import gapwise.exchange.TemplateWords;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.TwiceRead;
import gapwise.intake.Intake;
import gapwise.screening.Reader;
import gapwise.server.account.Right;
import gapwise.server.home.Home;
import gapwise.server.job.PostedForm;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** The agreed record, taken in once everything that differed is settled. */
public final class FinishPage {
  /** As the import names doubts. */
  private static final Pattern KEY = Pattern.compile("[0-9a-f]{16}");

  private final Home home;
  private final Clock clock;

  public FinishPage(Home home, Clock clock) {
    this.home = home;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.post(ExtractionAddress.PAPER + "/finish", Right.SETTLE, this::finish);
    routes.post(ExtractionAddress.PAPER + "/follow", Right.SETTLE, this::follow);
  }

  private static Draft draft(Reconciliation both, List<SettledDoubt> settled) {
    return AgreedDraft.of(
        both.paper().study(),
        both.paper().settling().orElseThrow().baseVersion(),
        both.agreed(),
        both.both(),
        settled);
  }

  /** What stands in the way, by the rules of every study that is handed in. */
  static SettleView.Finish finish(Home home, Reconciliation both) {
    DraftCheck check = DraftCheck.of(draft(both, List.of()), home.intake().known());
    int follows = both.paper().settling().orElseThrow().baseVersion();
    int stands = PaperPage.last(home, both.paper().study());
    return new SettleView.Finish(
        check.noted().stream()
            .filter(
                noted ->
                    noted.weight() == Noted.Weight.IMPOSSIBLE
                        || noted.weight() == Noted.Weight.NEEDED)
            .map(noted -> TemplateWords.said(noted.message()))
            .toList(),
        check.noted().stream()
            .filter(noted -> noted.weight() == Noted.Weight.DOUBT)
            .map(
                noted ->
                    new SettleView.Doubt(
                        noted.key().orElseThrow(), TemplateWords.said(noted.message())))
            .toList(),
        follows,
        stands == follows ? 0 : stands);
  }

  private void finish(Context context) {
    PostedForm form = new PostedForm(context);
    Reader who = Person.of(form);
    // Read before all else, so that a choice made meanwhile refuses what was worked out without it.
    ExtractionBase.Kept seen =
        home.extractions()
            .base()
            .find(PaperPage.paper(home, context).paper().study())
            .orElseThrow(() -> new ConflictResponse(say("extraction.no-paper")));
    Reconciliation both = SettlePage.settledBy(home, seen.paper(), who);
    if (!both.open().isEmpty()) {
      throw new ConflictResponse(say("extraction.still-open", Map.of("open", both.open().size())));
    }
    String why = form.first("why");
    if (why.isBlank() || why.length() > FieldChoice.LONGEST_WHY) {
      throw Person.wrong(
          "why", "missing-value", say("extraction.why", Map.of("most", FieldChoice.LONGEST_WHY)));
    }
    List<SettledDoubt> settled =
        form.values("key").stream()
            .filter(KEY.asMatchPredicate())
            .map(key -> new SettledDoubt(key, who.name(), why))
            .toList();
    Draft draft = draft(both, settled);
    String content =
        DraftCheck.of(draft, home.intake().known())
            .study()
            .map(TwiceRead.Finished::contentOf)
            .orElse("");
    HandedInDraft came =
        new Submission(home.intake())
            .handIn(
                draft,
                new Intake.As(who.name(), why),
                version ->
                    List.of(
                        home.extractions()
                            .base()
                            .end(
                                seen,
                                new TwiceRead.Finished(
                                    who, version, content, why, clock.instant()))));
    if (came instanceof HandedInDraft.NotYet) {
      throw new ConflictResponse(say("extraction.not-agreed-yet"));
    }
    if (came instanceof HandedInDraft.Overtaken) {
      throw new ConflictResponse(say("extraction.overtaken"));
    }
    context.redirect(ExtractionAddress.of(seen.paper().study()), HttpStatus.SEE_OTHER);
  }

  /** The agreed record follows the study as it stands now, once a person has looked at it. */
  private void follow(Context context) {
    PostedForm form = new PostedForm(context);
    Reader who = Person.of(form);
    ExtractionBase.Kept seen = PaperPage.paper(home, context);
    SettlePage.settledBy(home, seen.paper(), who);
    int stands = PaperPage.last(home, seen.paper().study());
    if (!form.first("version").equals(Integer.toString(stands))
        || !home.extractions()
            .base()
            .begin(seen, new TwiceRead.Settling(who, stands, clock.instant()))) {
      throw new ConflictResponse(say("extraction.changed-meanwhile"));
    }
    context.redirect(
        ExtractionAddress.of(seen.paper().study(), "/settle", who), HttpStatus.SEE_OTHER);
  }
}
