package gapwise.server.page.result;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Result;
import gapwise.answer.Answer;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.answer.Blocks;
import gapwise.answer.Edition;
import gapwise.answer.LengthAnswer;
import gapwise.answer.LengthShape;
import gapwise.answer.QuestionWords;
import gapwise.answer.SizeBands;
import gapwise.answer.Told;
import gapwise.evidence.LengthRange;
import gapwise.evidence.Outcome;
import gapwise.figure.Bubble;
import gapwise.figure.BubbleDrawing;
import gapwise.figure.BubbleTable;
import gapwise.figure.Medium;
import gapwise.figure.Shown;
import gapwise.problem.Problem;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.LengthAddress;
import gapwise.server.address.LengthBand;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Definitions;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TooShort;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** One outcome over the length of missing bone: series, line and bands of size. */
public final class BySizePage {

  /** Names that only this page and the pooled one read. */
  private static final List<String> OWN =
      List.of("shape", "cuts", "clock", "least", QuestionAddress.DEFINITION);

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final Answers answers;
  private final Edition edition;

  public BySizePage(
      Templates templates, Sites sites, StudySearch search, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.answers = answers;
    this.edition = edition;
  }

  /** A shape to choose, with the address that takes it. */
  public record Shape(String label, String href, boolean chosen) {}

  /**
   * One band of size.
   *
   * @param label such as "2 to 4"
   * @param told one entry a method; none where no series lies in the band
   * @param pooled address of its pooled result
   */
  public record Band(String label, List<Told> told, String pooled) {}

  /** The figure in its two widths, its numbers, and its files. */
  public record Drawn(Bubble bubble, String wide, String narrow, TakeFigure take) {
    /** Numbers in words. */
    public BubbleTable table() {
      return new BubbleTable(bubble);
    }

    /** The curve at some ten lengths, for a table. */
    public List<Bubble.At> curve() {
      List<Bubble.At> all = bubble.curve();
      int step = Math.max(1, all.size() / 10);
      return Stream.iterate(0, i -> i < all.size(), i -> i + step).map(all::get).toList();
    }
  }

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param form filters and outcomes to choose from
   * @param outcome the outcome asked for; empty where one must be chosen first
   * @param question the question in words
   * @param figure the figure; empty where nothing can be drawn
   * @param shapes line or curve
   * @param notes why something asked for is not drawn
   * @param bands pooled results by band
   * @param cuts the cuts between bands as the address gives them
   * @param selection the rows; empty where no outcome is chosen
   * @param plan the plan of the line as text
   * @param definitions how the series define the outcome
   */
  public record View(
      Site site,
      FilterForm form,
      Optional<Outcome> outcome,
      String question,
      Optional<Drawn> figure,
      List<Shape> shapes,
      List<String> notes,
      List<Band> bands,
      String cuts,
      Optional<Selection> selection,
      String plan,
      Definitions definitions) {

    /** What narrows the result, each with the address without it. */
    public List<FilterForm.On> on() {
      return Stream.concat(
              form.on().stream(), Definitions.taken(PagePaths.BY_SIZE, form.address()).stream())
          .toList();
    }

    /** Series followed too shortly for the outcome, if there are any. */
    public Optional<TooShort> tooShort() {
      return outcome.flatMap(
          asked ->
              selection.flatMap(
                  rows -> TooShort.of(PagePaths.BY_SIZE, form.address(), asked, rows)));
    }

    /** What must be known of the series taken together. */
    public List<String> aboutSeries() {
      return selection.stream()
          .flatMap(rows -> rows.notes().stream())
          .map(Problem::message)
          .toList();
    }

    /** Address of a download. */
    public String download(String name) {
      return form.address().at("/api/v1/" + name);
    }

    /** Address of the pooled result of the same question. */
    public String pooled() {
      return form.address().without(List.of("shape", "cuts")).at(PagePaths.POOLED);
    }

    /** Address of the groups with the same filters. */
    public String studies() {
      return form.address().without(OWN).at(PagePaths.STUDIES);
    }

    /** What stands beside the page. */
    public List<String> cautions() {
      return figure.map(drawn -> drawn.bubble().cautions()).orElse(AnswerForest.CAUTIONS);
    }

    /** Series that answer but give no middle length, so that they are not drawn. */
    public int without() {
      int drawn = figure.map(each -> each.bubble().points().size()).orElse(0);
      return selection.map(rows -> rows.rows().size() - drawn).orElse(0);
    }
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.BY_SIZE, this::show);
  }

  private void show(Context context) {
    templates.show(context, "result/BySizePage", view(new Address(context.queryParamMap())));
  }

  private View view(Address address) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.BY_SIZE, address, request, found);
    LengthShape shape = LengthAddress.shape(address);
    List<Double> cuts = LengthAddress.cuts(address);
    return QuestionAddress.question(address)
        .map(question -> answered(form, answers.byLength(question, shape), cuts))
        .orElseGet(() -> unasked(form));
  }

  private View unasked(FilterForm form) {
    return new View(
        sites.of("By size", Site.Section.BY_SIZE),
        form,
        Optional.empty(),
        "",
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        form.address().first("cuts"),
        Optional.empty(),
        "",
        Definitions.NONE);
  }

  private View answered(FilterForm form, LengthAnswer told, List<Double> cuts) {
    Answer answer = told.answer();
    String words = QuestionWords.of(answer.question());
    return new View(
        sites.of(words + ", by size", Site.Section.BY_SIZE),
        form,
        Optional.of(answer.question().outcome()),
        words,
        told.figure(edition).map(bubble -> drawn(form.address(), bubble)),
        shapes(form.address(), told.asked()),
        told.notes(),
        bands(form.address(), answer.selection(), cuts),
        form.address().first("cuts"),
        Optional.of(answer.selection()),
        answer.plan().map(ObjectNode::toPrettyString).orElse(""),
        Definitions.of(PagePaths.BY_SIZE, form.address(), answers, answer.question()));
  }

  private static Drawn drawn(Address address, Bubble bubble) {
    return new Drawn(
        bubble,
        BubbleDrawing.draw(bubble, Medium.PAGE).inline(),
        BubbleDrawing.draw(bubble, Medium.PHONE).inline(),
        TakeFigure.of("/api/v1/by-size", address, bubble));
  }

  private static List<Shape> shapes(Address address, LengthShape asked) {
    return Stream.of(LengthShape.values())
        .map(
            shape ->
                new Shape(
                    shape.label(),
                    address.with("shape", shape.code()).at(PagePaths.BY_SIZE),
                    shape == asked))
        .toList();
  }

  /** On the clock that the figure shows, since bands on other clocks would not belong to it. */
  private List<Band> bands(Address address, Selection selection, List<Double> cuts) {
    Question asked = selection.question();
    Question onClock = asked.withClock(selection.clock());
    return SizeBands.of(answers, onClock, cuts).stream().map(band -> band(address, band)).toList();
  }

  private static Band band(Address address, SizeBands.Band band) {
    Optional<Result> result = band.answer().result();
    Address open = address.without(List.of("shape", "cuts"));
    LengthRange lengths = band.lengths();
    return new Band(
        label(lengths),
        result.map(each -> Blocks.told(band.answer(), each)).orElse(List.of()),
        new LengthBand(lengths).in(open).with("match", "centre").at(PagePaths.POOLED));
  }

  private static String label(LengthRange lengths) {
    String from = Shown.centimetres(lengths.fromCentimetres());
    if (Double.isInfinite(lengths.toCentimetres())) {
      return from + " and more";
    }
    String to = Shown.centimetres(lengths.toCentimetres());
    return lengths.fromCentimetres() == 0 ? "under " + to : from + " to under " + to;
  }
}
