package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Ids;
import gapwise.extraction.Side;
import gapwise.extraction.TwiceRead;
import gapwise.reference.Author;
import gapwise.reference.Reference;
import gapwise.reference.kept.KeptLine;
import gapwise.reference.kept.KeptReference;
import gapwise.screening.Reader;
import gapwise.screening.Stage;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Home;
import gapwise.server.home.Screening;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which papers two people extract apart, how far each is, and where one is opened. */
public final class ExtractionPage {
  /** References shown at once. */
  private static final int MOST = 50;

  /** Pages that stand where a paper's would start so. */
  private static final String TAKEN = "agreement";

  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final Clock clock;

  public ExtractionPage(Templates templates, Sites sites, Home home, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.EXTRACTION, Right.SEE, this::show);
    routes.post(PagePaths.EXTRACTION, Right.EXTRACT, this::open);
  }

  private void show(Context context) {
    List<TwiceRead> papers = home.extractions().papers();
    List<ExtractionView.Kept> kept = kept(papers);
    String asked = new Address(context.queryParamMap()).first("reference");
    templates.show(
        context,
        "extraction/ExtractionPage",
        new ExtractionView(
            sites.of(say("extraction.title"), Place.EXTRACTION),
            papers.stream().map(ExtractionPage::line).toList(),
            kept.stream().limit(MOST).toList(),
            Math.max(0, kept.size() - MOST),
            home.screening()
                .shown()
                .shelf()
                .line(asked)
                .map(ExtractionPage::form)
                .orElse(new ExtractionView.Form("", "", "")),
            papers.stream().anyMatch(TwiceRead::isOpenToAll)));
  }

  private static ExtractionView.Line line(TwiceRead paper) {
    return new ExtractionView.Line(
        ExtractionAddress.of(paper.study()),
        paper.study(),
        paper.title(),
        far(paper, Side.FIRST),
        far(paper, Side.SECOND),
        stage(paper));
  }

  static String far(TwiceRead paper, Side side) {
    String name = paper.reader(side).name();
    return paper.handedIn(side).isPresent()
        ? say("extraction.handed-in", Map.of("name", name))
        : say("extraction.not-handed-in", Map.of("name", name));
  }

  static String stage(TwiceRead paper) {
    return switch (paper.stage()) {
      case BEING_READ -> say("extraction.being-read");
      case READ_TWICE -> say("extraction.read-twice");
      case BEING_SETTLED ->
          say(
              "extraction.being-settled",
              Map.of("name", paper.settling().orElseThrow().who().name()));
      case AGREED ->
          say("extraction.agreed", Map.of("name", paper.finished().orElseThrow().who().name()));
    };
  }

  /** The papers that screening keeps after their full text, and that nobody opened. */
  private List<ExtractionView.Kept> kept(List<TwiceRead> papers) {
    Screening.Shown shown = home.screening().shown();
    Set<String> opened = new HashSet<>();
    for (TwiceRead paper : papers) {
      paper
          .reference()
          .filter(id -> shown.shelf().line(id).isPresent())
          .ifPresent(id -> opened.add(shown.shelf().groups().leading(id)));
    }
    List<ExtractionView.Kept> kept = new ArrayList<>();
    for (String id : shown.board().papers(Stage.FULL_TEXT)) {
      if (shown.board().standing(Stage.FULL_TEXT, id).keeps() && !opened.contains(id)) {
        shown
            .shelf()
            .line(id)
            .ifPresent(
                line ->
                    kept.add(
                        new ExtractionView.Kept(
                            new Address(Map.of("reference", List.of(id))).at(PagePaths.EXTRACTION)
                                + "#open",
                            line.brief().titles().main(),
                            people(line.brief()))));
      }
    }
    return kept;
  }

  private static String people(Reference brief) {
    String first = brief.authors().stream().findFirst().map(Author::line).orElse("");
    String year = year(brief);
    return first.isEmpty() || year.isEmpty() ? first + year : first + " " + year;
  }

  private static String year(Reference brief) {
    return brief.published().year().isPresent()
        ? Integer.toString(brief.published().year().getAsInt())
        : "";
  }

  /** A name for the study, to be changed by whoever opens it. */
  private static ExtractionView.Form form(KeptLine line) {
    Reference brief = line.brief();
    String family =
        brief.authors().stream()
            .findFirst()
            .map(one -> one instanceof Author.Person person ? person.fullFamily() : one.line())
            .orElse("");
    String name =
        (family + "-" + year(brief))
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-|-$", "");
    return new ExtractionView.Form(
        name.substring(0, Math.min(name.length(), Ids.LONGEST)),
        title(brief.titles().main()),
        line.id());
  }

  private static String title(String title) {
    return title.substring(0, Math.min(title.length(), TwiceRead.LONGEST_TITLE));
  }

  private void open(Context context) {
    PostedForm form = new PostedForm(context);
    String study = form.first("study");
    if (!Ids.isId(study) || study.startsWith(TAKEN)) {
      throw Person.wrong("study", "id-form", say("extraction.name-needed"));
    }
    Reader first = Person.required(form, "first");
    Reader second = Person.required(form, "second");
    if (first.key().equals(second.key())) {
      throw Person.wrong("second", "same-person", say("extraction.two-people"));
    }
    TwiceRead paper =
        TwiceRead.opened(
            study,
            Optional.of(form.first("reference")).filter(KeptReference::isId),
            title(form.first("title")),
            first,
            second,
            Person.typed(form.first("settler"), "settler"),
            new TwiceRead.Opened(Person.of(form), clock.instant()));
    if (!home.extractions().base().open(paper)) {
      throw new ConflictResponse(say("extraction.open-already", Map.of("study", study)));
    }
    context.redirect(ExtractionAddress.of(study), HttpStatus.SEE_OTHER);
  }
}
