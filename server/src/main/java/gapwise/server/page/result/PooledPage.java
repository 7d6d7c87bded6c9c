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
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Definitions;
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
  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final Answers answers;
  private final Edition edition;

  public PooledPage(
      Templates templates, Sites sites, StudySearch search, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.answers = answers;
    this.edition = edition;
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.POOLED, Right.SEE, this::show);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "result/PooledPage", view(address));
  }

  private PooledView view(Address address) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.POOLED, address, request, found);
    return QuestionAddress.question(address)
        .<PooledView>map(
            question -> asked(form, answers.ask(question, QuestionAddress.split(address))))
        .orElseGet(
            () -> new PooledView.Unasked(sites.of("Pooled results", Place.POOLED, address), form));
  }

  private PooledView.Asked asked(FilterForm form, Answer answer) {
    String words = QuestionWords.of(answer.question());
    return new PooledView.Asked(
        sites.of(words, Place.POOLED, form.address()).keeping(PagePaths.POOLED, form.address()),
        form,
        words,
        answer
            .result()
            .<PooledView.Finding>map(result -> pooled(form.address(), answer, result))
            .orElseGet(PooledView.NothingUsable::new),
        Stream.concat(
                SplitWords.notSplit(form.address(), answer).stream(),
                PooledNotes.warnings(answer).stream())
            .toList(),
        RiskOfBias.of(PagePaths.POOLED, form.address(), answer, answers),
        PooledNotes.leftOut(answer.selection()),
        answer.selection(),
        answer.plan().map(ObjectNode::toPrettyString),
        Definitions.of(PagePaths.POOLED, form.address(), answers, answer.question()));
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
