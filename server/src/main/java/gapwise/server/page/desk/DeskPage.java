package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.DraftFullException;
import gapwise.desk.Drafts;
import gapwise.desk.KeptDraft;
import gapwise.desk.Noted;
import gapwise.evidence.Ids;
import gapwise.exchange.Template;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The drafts of this home, and where one is begun. */
public final class DeskPage {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final Drafts drafts;
  private final StudiesAt studies;

  public DeskPage(Templates templates, Sites sites, Drafts drafts, StudiesAt studies) {
    this.templates = templates;
    this.sites = sites;
    this.drafts = drafts;
    this.studies = studies;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.DESK, Right.EXTRACT, this::show);
    routes.post(PagePaths.DESK, Right.EXTRACT, this::begin);
    routes.post(PagePaths.STUDIES + "/{id}/mend", Right.EXTRACT, this::mend);
  }

  private void show(Context context) {
    templates.show(
        context,
        "desk/DeskPage",
        new DeskView(
            sites.of("The desk", Place.DESK),
            drafts.all().stream()
                .filter(kept -> kept.draft().reader().isEmpty())
                .map(this::line)
                .toList()));
  }

  private DeskView.Line line(KeptDraft kept) {
    Draft draft = kept.draft();
    String title =
        draft.rows(Template.STUDIES).stream().findFirst().map(row -> row.text("title")).orElse("");
    DraftCheck check = DraftCheck.of(draft);
    int wrong = check.count(Noted.Weight.IMPOSSIBLE) + check.count(Noted.Weight.NEEDED);
    String about =
        draft.baseVersion() == 0
            ? say("desk.new", Map.of("wrong", wrong))
            : say(
                "desk.change",
                Map.of("version", Integer.toString(draft.baseVersion()), "wrong", wrong));
    return new DeskView.Line(
        PagePaths.DESK + "/" + kept.id(), draft.study(), title, about, keptAt(kept));
  }

  static String keptAt(KeptDraft kept) {
    return kept.who().isEmpty()
        ? MINUTE.format(kept.when())
        : MINUTE.format(kept.when()) + ", " + kept.who();
  }

  private void begin(Context context) {
    PostedForm form = new PostedForm(context);
    String id = form.first("study");
    if (!Ids.isId(id)) {
      Problems problems = new Problems();
      problems.add("study", "id-form", say("desk.name-needed"));
      throw new WrongInputException(problems.list());
    }
    open(context, studies.study(id).map(DeskPage::draft).orElseGet(() -> Draft.of(id, last(id))));
  }

  private void mend(Context context) {
    Optional<KeptStudy> kept = studies.study(StudyAddress.id(context.pathParam("id")));
    open(
        context,
        kept.map(DeskPage::draft)
            .orElseThrow(() -> new NotFoundResponse("There is no such study here to be mended.")));
  }

  /** A study that was withdrawn keeps its history, and a new one of its name goes on with it. */
  private int last(String id) {
    List<StudyVersion> history = studies.history(id);
    return history.isEmpty() ? 0 : history.get(history.size() - 1).stamp().version();
  }

  private static Draft draft(KeptStudy kept) {
    try {
      return Draft.of(kept.study(), kept.stamp().version());
    } catch (DraftFullException full) {
      throw new ConflictResponse(say("desk.too-large", Map.of("most", Draft.MOST_ROWS)));
    }
  }

  private void open(Context context, Draft draft) {
    KeptDraft begun = drafts.begin(draft, "");
    context.redirect(PagePaths.DESK + "/" + begun.id(), HttpStatus.SEE_OTHER);
  }
}
