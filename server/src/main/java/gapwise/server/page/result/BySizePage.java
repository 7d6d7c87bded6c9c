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
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Definitions;
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

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.BY_SIZE, Right.SEE, this::show);
  }

  private void show(Context context) {
    templates.show(context, "result/BySizePage", view(new Address(context.queryParamMap())));
  }

  private BySizeView view(Address address) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.BY_SIZE, address, request, found);
    LengthShape shape = LengthAddress.shape(address);
    List<Double> cuts = LengthAddress.cuts(address);
    return QuestionAddress.question(address)
        .<BySizeView>map(question -> asked(form, answers.byLength(question, shape), cuts))
        .orElseGet(() -> new BySizeView.Unasked(sites.of("By size", Place.BY_SIZE, address), form));
  }

  private BySizeView.Asked asked(FilterForm form, LengthAnswer told, List<Double> cuts) {
    Answer answer = told.answer();
    String words = QuestionWords.of(answer.question());
    return new BySizeView.Asked(
        sites
            .of(say("page.by-size", Map.of("question", words)), Place.BY_SIZE, form.address())
            .keeping(PagePaths.BY_SIZE, form.address()),
        form,
        words,
        told.large(edition).map(figure -> drawn(form.address(), figure)),
        shapes(form.address(), told.asked()),
        told.notes(),
        bands(form.address(), answer.selection(), cuts),
        answer.selection(),
        answer.plan().map(ObjectNode::toPrettyString),
        Definitions.of(PagePaths.BY_SIZE, form.address(), answers, answer.question()));
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

  /** On the clock that the figure shows, since bands on other clocks would not belong to it. */
  private List<BySizeView.Band> bands(Address address, Selection selection, List<Double> cuts) {
    Question onClock = selection.fixed(selection.question());
    return SizeBands.of(answers, onClock, cuts).stream().map(band -> band(address, band)).toList();
  }

  private static BySizeView.Band band(Address address, SizeBands.Band band) {
    Optional<Result> result = band.answer().result();
    Address open = address.without(List.of("shape", "cuts"));
    LengthRange lengths = band.lengths();
    return new BySizeView.Band(
        label(lengths),
        result.map(each -> Blocks.told(band.answer(), each)).orElse(List.of()),
        new LengthBand(lengths)
            .in(open)
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
