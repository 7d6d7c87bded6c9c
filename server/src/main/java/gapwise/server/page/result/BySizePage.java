package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.result.Result;
import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.Blocks;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.answer.LengthAnswer;
import gapwise.answer.LengthShape;
import gapwise.answer.QuestionWords;
import gapwise.answer.SizeBands;
import gapwise.evidence.unit.LengthRange;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.value.Shown;
import gapwise.problem.Problem;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.LengthNotes;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.LengthAddress;
import gapwise.server.address.LengthBand;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.home.Pieces;
import gapwise.server.home.Remembered;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.Definitions;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** One outcome over the length of missing bone: series, line and bands of size. */
public final class BySizePage {
  /** A drawing with its table takes some hundred kilobytes. */
  private static final int MOST_MADE = 32;

  /** A band is some sentences. */
  private static final int MOST_BANDS = 500;

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final Answers answers;
  private final Edition edition;
  private final Remembered<Asking, Made> made;
  private final Remembered<BandAsking, BySizeView.Band> bands;

  private record Asking(Address address, Question question, LengthShape shape, List<Double> cuts) {}

  /**
   * A band of an answer.
   *
   * @param address without what shapes the figure
   * @param onClock the question on the clock that the figure shows, since bands on other clocks
   *     would not belong to it
   */
  private record BandAsking(Address address, Question onClock, LengthRange lengths) {}

  /** What is made of an answer and its bands. */
  private record Made(
      Optional<BySizeView.Drawn> figure, List<BySizeView.Band> bands, Definitions definitions) {}

  public BySizePage(
      Templates templates, Sites sites, StudySearch search, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.answers = answers;
    this.edition = edition;
    this.made = new Remembered<>(MOST_MADE, this::made);
    this.bands = new Remembered<>(MOST_BANDS, this::band);
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.BY_SIZE, Right.SEE, this::show);
    routes.get(PagePaths.BY_SIZE_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "result/BySizePage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "result/BySizeShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private BySizeView view(Address address, Fetching.Way way) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.BY_SIZE, address, request, found);
    LengthShape shape = LengthAddress.shape(address);
    List<Double> cuts = LengthAddress.cuts(address);
    return QuestionAddress.question(address)
        .<BySizeView>map(question -> asked(form, new Asking(address, question, shape, cuts), way))
        .orElseGet(() -> new BySizeView.Unasked(sites.of("By size", Place.BY_SIZE, address), form));
  }

  private BySizeView asked(FilterForm form, Asking asking, Fetching.Way way) {
    String words = QuestionWords.of(asking.question());
    Site site =
        sites
            .of(say("page.by-size", Map.of("question", words)), Place.BY_SIZE, form.address())
            .keeping(PagePaths.BY_SIZE, form.address());
    return Awaited.of(
            asking.question(),
            search,
            pieces(asking),
            way,
            Fetching.of(form.address(), PagePaths.BY_SIZE_RESULT, PagePaths.BY_SIZE))
        .<BySizeView>map(awaited -> new BySizeView.Working(site, form, words, awaited))
        .orElseGet(() -> shown(site, form, words, asking));
  }

  private Pieces pieces(Asking asking) {
    Pieces pieces =
        Pieces.ofAnswer(
            answers,
            asking.question(),
            () -> answers.hasByLength(asking.question(), asking.shape()),
            () -> answers.byLength(asking.question(), asking.shape()));
    for (LengthRange lengths : SizeBands.lengths(asking.question(), asking.cuts())) {
      pieces.and(
          () -> made.has(asking) || bands.has(bandAsking(asking, lengths)),
          () -> bands.of(bandAsking(asking, lengths)));
    }
    return pieces.and(() -> made.has(asking), () -> made.of(asking));
  }

  private BandAsking bandAsking(Asking asking, LengthRange lengths) {
    Selection selection = answers.byLength(asking.question(), asking.shape()).answer().selection();
    return new BandAsking(
        asking.address().without(List.of("shape", "cuts")),
        selection.fixed(selection.question()),
        lengths);
  }

  private BySizeView.Asked shown(Site site, FilterForm form, String words, Asking asking) {
    LengthAnswer told = answers.byLength(asking.question(), asking.shape());
    Answer answer = told.answer();
    Made shown = made.of(asking);
    return new BySizeView.Asked(
        site,
        form,
        words,
        shown.figure(),
        shapes(form.address(), told.asked()),
        told.notes(),
        shown.bands(),
        answer.selection(),
        answer.plan().map(ObjectNode::toPrettyString),
        shown.definitions());
  }

  private Made made(Asking asking) {
    Address address = asking.address();
    LengthAnswer told = answers.byLength(asking.question(), asking.shape());
    return new Made(
        told.large(edition).map(figure -> drawn(address, figure)),
        SizeBands.lengths(asking.question(), asking.cuts()).stream()
            .map(lengths -> bands.of(bandAsking(asking, lengths)))
            .toList(),
        Definitions.of(PagePaths.BY_SIZE, address, answers, told.answer().question()));
  }

  private static BySizeView.Drawn drawn(Address address, Large<Bubble> figure) {
    Bubble bubble = figure.drawn();
    return new BySizeView.Drawn(
        bubble,
        figure.whole().points().size(),
        TwoWidths.of(bubble),
        TakeFigure.of("/api/v1/by-size", address, figure));
  }

  private static List<BySizeView.Shape> shapes(Address address, LengthShape asked) {
    return Stream.of(LengthShape.values())
        .map(
            shape ->
                new BySizeView.Shape(
                    shape.label(),
                    address.with("shape", shape.code()).at(PagePaths.BY_SIZE),
                    shape == asked))
        .toList();
  }

  private BySizeView.Band band(BandAsking asking) {
    Address address = asking.address();
    LengthRange lengths = asking.lengths();
    SizeBands.Band band = SizeBands.of(answers, asking.onClock(), lengths);
    Optional<Result> result = band.answer().result();
    return new BySizeView.Band(
        label(lengths),
        result.map(each -> Blocks.told(band.answer(), each)).orElse(List.of()),
        new LengthBand(lengths)
            .in(address)
            .with("match", match(address, lengths))
            .at(PagePaths.POOLED),
        band.answer().selection().notes().stream()
            .filter(note -> note.code().equals(LengthNotes.ONLY_IN_RANGE))
            .map(Problem::message)
            .toList());
  }

  /** The end of a band belongs to the next, but for the end of the lengths asked for. */
  private static String match(Address address, LengthRange lengths) {
    boolean endsWithQuestion =
        Filters.read(address)
            .defect()
            .filter(asked -> Math.nextUp(asked.toCentimetres()) == lengths.toCentimetres())
            .isPresent();
    return endsWithQuestion && !address.first("match").equals(Filters.BAND)
        ? "centre"
        : Filters.BAND;
  }

  private static String label(LengthRange lengths) {
    String from = Shown.centimetres(lengths.fromCentimetres());
    if (Double.isInfinite(lengths.toCentimetres())) {
      return say("page.lengths-from", Map.of("from", from));
    }
    String to = Shown.centimetres(lengths.toCentimetres());
    return lengths.fromCentimetres() == 0
        ? say("page.lengths-under", Map.of("to", to))
        : say("page.lengths-between", Map.of("from", from, "to", to));
  }
}
