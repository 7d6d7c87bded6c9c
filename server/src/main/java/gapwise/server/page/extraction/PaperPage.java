package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.ExtractionBase;
import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.desk.Draft;
import gapwise.desk.KeptDraft;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.Side;
import gapwise.extraction.TwiceRead;
import gapwise.screening.Reader;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.home.Home;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One paper: who reads it and how far each is, the way to one's own form, and once both stand,
 * where they differed, who settled it and why.
 */
public final class PaperPage {
  private static final String CSV = ExtractionAddress.PAPER + "/differences.csv";

  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final StudiesAt studies;
  private final Clock clock;

  public PaperPage(Templates templates, Sites sites, Home home, StudiesAt studies, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.studies = studies;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(ExtractionAddress.PAPER, Right.SEE, this::show);
    routes.get(CSV, Right.SEE, this::differences);
    routes.post(ExtractionAddress.PAPER + "/draft", Right.EXTRACT, this::draft);
    routes.post(ExtractionAddress.PAPER + "/begin", Right.SETTLE, this::begin);
  }

  /** The paper that an address names. */
  static ExtractionBase.Kept paper(Home home, Context context) {
    return home.extractions()
        .find(StudyAddress.id(context.pathParam("study")))
        .orElseThrow(() -> new NotFoundResponse(say("extraction.no-paper")));
  }

  private void show(Context context) {
    TwiceRead paper = paper(home, context).paper();
    Optional<Reconciliation> both = home.extractions().reconciliation(paper.study());
    templates.show(
        context,
        "extraction/PaperPage",
        new PaperView(
            sites.of(paper.study(), Place.EXTRACTION),
            paper,
            ExtractionAddress.of(paper.study()),
            Arrays.stream(Side.values()).map(side -> ExtractionPage.far(paper, side)).toList(),
            ExtractionPage.stage(paper),
            both.map(Lines::told).orElse(List.of()),
            both.map(Lines::of).orElse(List.of()),
            paper
                .finished()
                .filter(end -> studies.study(paper.study()).isPresent())
                .map(end -> StudyAddress.of(paper.study()))));
  }

  private void differences(Context context) {
    TwiceRead paper = paper(home, context).paper();
    Reconciliation both =
        home.extractions()
            .reconciliation(paper.study())
            .orElseThrow(() -> new ConflictResponse(say("extraction.not-yet-open")));
    Attachment.send(
        context, "text/csv; charset=utf-8", "where-they-differed.csv", DifferencesCsv.of(both));
  }

  /** The form of one of the two, begun where she has none yet. */
  private void draft(Context context) {
    TwiceRead paper = paper(home, context).paper();
    Reader who = Person.of(new PostedForm(context));
    Side side =
        paper
            .side(who)
            .orElseThrow(
                () ->
                    new ForbiddenResponse(
                        say(
                            "extraction.not-a-reader",
                            Map.of(
                                "name", who.name(),
                                "first", paper.first().name(),
                                "second", paper.second().name()))));
    if (paper.isOpenToAll()) {
      throw new ConflictResponse(say("extraction.settling-already"));
    }
    String name = paper.reader(side).name();
    KeptDraft draft =
        drafts(paper, name).stream()
            .findFirst()
            .orElseGet(() -> home.drafts().begin(Draft.ofReader(paper.study(), name), name));
    context.redirect(
        new Address(Map.of(Person.WHO, List.of(name))).at(PagePaths.DESK + "/" + draft.id()),
        HttpStatus.SEE_OTHER);
  }

  private List<KeptDraft> drafts(TwiceRead paper, String reader) {
    return home.drafts().all().stream()
        .filter(kept -> kept.draft().study().equals(paper.study()))
        .filter(kept -> kept.draft().reader().filter(reader::equals).isPresent())
        .toList();
  }

  /** From here on both extractions stand as they are, and may be seen. */
  private void begin(Context context) {
    ExtractionBase.Kept seen = paper(home, context);
    TwiceRead paper = seen.paper();
    Reader who = Person.of(new PostedForm(context));
    if (paper.stage() == TwiceRead.Stage.BEING_READ) {
      throw new ConflictResponse(say("extraction.one-missing"));
    }
    boolean another = paper.settler().filter(one -> !one.key().equals(who.key())).isPresent();
    if (another) {
      throw new ForbiddenResponse(
          say("extraction.settles", Map.of("name", paper.settler().orElseThrow().name())));
    }
    if (paper.stage() == TwiceRead.Stage.READ_TWICE) {
      TwiceRead.Settling settling =
          new TwiceRead.Settling(who, last(home, paper.study()), clock.instant());
      if (!home.extractions().base().begin(seen, settling)) {
        throw new ConflictResponse(say("extraction.changed-meanwhile"));
      }
      for (Side side : Side.values()) {
        drafts(paper, paper.reader(side).name()).forEach(one -> home.drafts().drop(one.id()));
      }
    }
    context.redirect(ExtractionAddress.of(paper.study(), "/settle", who), HttpStatus.SEE_OTHER);
  }

  /** The version that the agreed record follows, a withdrawn one among them. */
  static int last(Home home, String study) {
    List<StudyVersion> history = home.base().latest().history(study);
    return history.isEmpty() ? 0 : history.get(history.size() - 1).stamp().version();
  }
}
