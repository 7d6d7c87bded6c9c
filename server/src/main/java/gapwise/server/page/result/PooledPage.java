package gapwise.server.page.result;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.result.Result;
import gapwise.answer.Answer;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.answer.Blocks;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.answer.MethodTable;
import gapwise.answer.QuestionWords;
import gapwise.answer.Told;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestTable;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
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
import gapwise.server.page.part.RiskOfBias;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One outcome pooled over the groups that the filters find, told first and drawn then. */
public final class PooledPage {
  /** A drawing with its table takes some hundred kilobytes. */
  private static final int MOST_MADE = 32;

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final Answers answers;
  private final Edition edition;
  private final Remembered<Asking, Made> made;

  private record Asking(Address address, Question question, Optional<DetailKind> split) {}

  /** What is made of an answer, which takes as long as pooling it. */
  private record Made(PooledView.Finding finding, RiskOfBias risk, Definitions definitions) {}

  public PooledPage(
      Templates templates, Sites sites, StudySearch search, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.answers = answers;
    this.edition = edition;
    this.made = new Remembered<>(MOST_MADE, this::made);
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.POOLED, Right.SEE, this::show);
    routes.get(PagePaths.POOLED_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "result/PooledPage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "result/PooledShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private PooledView view(Address address, Fetching.Way way) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.POOLED, address, request, found);
    return QuestionAddress.question(address)
        .<PooledView>map(
            question ->
                asked(form, new Asking(address, question, QuestionAddress.split(address)), way))
        .orElseGet(
            () -> new PooledView.Unasked(sites.of("Pooled results", Place.POOLED, address), form));
  }

  private PooledView asked(FilterForm form, Asking asking, Fetching.Way way) {
    String words = QuestionWords.of(asking.question());
    Site site =
        sites.of(words, Place.POOLED, form.address()).keeping(PagePaths.POOLED, form.address());
    return Awaited.of(
            asking.question(),
            search,
            pieces(asking),
            way,
            Fetching.of(form.address(), PagePaths.POOLED_RESULT, PagePaths.POOLED))
        .<PooledView>map(awaited -> new PooledView.Working(site, form, words, awaited))
        .orElseGet(() -> shown(site, form, words, asking));
  }

  private Pieces pieces(Asking asking) {
    return Pieces.ofAnswer(
            answers,
            asking.question(),
            () -> answers.hasAsked(asking.question(), asking.split()),
            () -> answers.ask(asking.question(), asking.split()))
        .and(() -> made.has(asking), () -> made.of(asking));
  }

  private PooledView.Asked shown(Site site, FilterForm form, String words, Asking asking) {
    Answer answer = answers.ask(asking.question(), asking.split());
    Made shown = made.of(asking);
    return new PooledView.Asked(
        site,
        form,
        words,
        shown.finding(),
        Stream.concat(
                SplitWords.notSplit(form.address(), answer).stream(),
                PooledNotes.warnings(answer).stream())
            .toList(),
        shown.risk(),
        PooledNotes.leftOut(answer.selection()),
        answer.selection(),
        answer.plan().map(ObjectNode::toPrettyString),
        shown.definitions());
  }

  private Made made(Asking asking) {
    Address address = asking.address();
    Answer answer = answers.ask(asking.question(), asking.split());
    return new Made(
        answer
            .result()
            .<PooledView.Finding>map(result -> pooled(address, answer, result))
            .orElseGet(PooledView.NothingUsable::new),
        RiskOfBias.of(PagePaths.POOLED, address, answer, answers),
        Definitions.of(PagePaths.POOLED, address, answers, answer.question()));
  }

  private PooledView.Pooled pooled(Address address, Answer answer, Result result) {
    List<Told> told = Blocks.told(answer, result);
    return new PooledView.Pooled(
        told,
        MethodTable.of(answer, result, reporting(answer.question()))
            .map(
                table ->
                    MethodsView.of(table, address, answer.question().among().defect().isPresent())),
        AnswerForest.noComparison(result),
        drawn(address, AnswerForest.large(answer, result, edition)),
        Statistics.of(result),
        formula(result.plan()),
        PooledNotes.aboutNumbers(result),
        PooledNotes.aboutStudies(result),
        told.size() > 1 ? ComparisonAlert.of(answer, result) : Optional.empty());
  }

  /** Where the page of methods has the formula of what was pooled. */
  private static String formula(ObjectNode plan) {
    boolean log = plan.path("scale").asText().equals("log");
    return PagePaths.METHOD
        + switch (plan.path("measure").asText()) {
          case "proportion" -> "#formula-shares";
          case "incidence-rate" -> "#formula-rates";
          default -> log ? "#formula-log-means" : "#formula-means";
        };
  }

  /** Methods and details of which a group reports the outcome, its number of use or not. */
  private Set<String> reporting(Question question) {
    SearchRequest request = question.among().withOutcomes(Set.of(question.outcome().code()));
    return search.search(request, StudySearch.Order.YEAR_DESCENDING, 0, 0).facets().stream()
        .filter(facet -> Set.of("methods", "details").contains(facet.filter()))
        .flatMap(facet -> facet.counts().stream())
        .map(SearchAnswer.Count::code)
        .collect(Collectors.toSet());
  }

  private static PooledView.Drawn drawn(Address address, Large<Forest> figure) {
    Forest forest = figure.drawn();
    return new PooledView.Drawn(
        TwoWidths.of(forest),
        ForestTable.of(forest).lines(),
        TakeFigure.of("/api/v1/forest", address, figure),
        figure.some());
  }
}
