package gapwise.server.page.result;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Result;
import gapwise.answer.Answer;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.answer.Blocks;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Edition;
import gapwise.answer.ModelWords;
import gapwise.answer.QuestionWords;
import gapwise.answer.Told;
import gapwise.evidence.Clock;
import gapwise.evidence.Outcome;
import gapwise.figure.Forest;
import gapwise.figure.ForestDrawing;
import gapwise.figure.ForestTable;
import gapwise.figure.Medium;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
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

  /** Groups left out for one reason. */
  public record Reason(String message, List<LeftOut> groups) {}

  /** The figure in its two widths, its rows as a table, and its files. */
  public record Drawn(String wide, String narrow, List<ForestTable.Line> lines, TakeFigure take) {

    /** Where the series were published, each once. */
    public List<String> sources() {
      return lines.stream()
          .map(ForestTable.Line::citation)
          .filter(citation -> !citation.isBlank())
          .distinct()
          .toList();
    }
  }

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param form filters and outcomes to choose from
   * @param outcome the outcome asked for; empty where one must be chosen first
   * @param question the question in words
   * @param told the answer in sentences, one method after another
   * @param figure the figure; empty where nothing can be drawn
   * @param statistics the numbers of heterogeneity and model
   * @param model model and interval in words
   * @param warnings what must be known beside it, in words
   * @param aboutNumbers what must be known of the pooled numbers
   * @param aboutStudies notes about single studies
   * @param leftOut what was left out, by reason
   * @param selection the rows; empty where no outcome is chosen
   * @param plan the plan as text
   * @param filters address of the studies with the same filters
   * @param definitions how the series define the outcome
   */
  public record View(
      Site site,
      FilterForm form,
      Optional<Outcome> outcome,
      String question,
      List<Told> told,
      Optional<Drawn> figure,
      List<Statistics.Line> statistics,
      String model,
      List<String> warnings,
      List<String> aboutNumbers,
      List<String> aboutStudies,
      List<Reason> leftOut,
      Optional<Selection> selection,
      String plan,
      String filters,
      Definitions definitions) {

    /** What narrows the result, each with the address without it. */
    public List<FilterForm.On> on() {
      return Stream.concat(
              form.on().stream(), Definitions.taken(PagePaths.POOLED, form.address()).stream())
          .toList();
    }

    /** Address of a download of this result. */
    public String download(String name) {
      return form.address().at("/api/v1/" + name);
    }

    /** Address of the same question over the length of missing bone. */
    public String bySize() {
      return form.address().at(PagePaths.BY_SIZE);
    }

    /** Address of the same question with small series against large ones. */
    public String funnel() {
      return form.address().at(PagePaths.FUNNEL);
    }

    /** The other ways in which papers count the same thing, with their addresses. */
    public List<FilterForm.On> sameFamily() {
      if (outcome.isEmpty()) {
        return List.of();
      }
      return form.families().stream()
          .filter(family -> family.name().equals(outcome.get().family()))
          .flatMap(family -> family.outcomes().stream())
          .filter(choice -> !choice.chosen() && choice.count() > 0)
          .map(
              choice ->
                  new FilterForm.On(
                      choice.label() + " (" + choice.count() + ")",
                      PagePaths.POOLED,
                      form.address().with("outcome", choice.value())))
          .toList();
    }

    /** What stands beside every result. */
    public List<String> cautions() {
      return AnswerForest.CAUTIONS;
    }

    /** Said where methods stand side by side. */
    public Optional<String> noComparison() {
      return told.size() > 1 ? Optional.of(AnswerForest.NO_COMPARISON) : Optional.empty();
    }

    /** What differs between the groups of several methods. */
    public Optional<ComparisonAlert> alert() {
      return noComparison().isEmpty()
          ? Optional.empty()
          : selection.flatMap(rows -> ComparisonAlert.of(rows.rows()));
    }

    /** How many of the groups only reach into the lengths asked for; empty where none does. */
    public Optional<String> reachingIn() {
      return selection
          .filter(rows -> rows.rowsOnlyOverlapping() > 0)
          .map(
              rows ->
                  "Of "
                      + rows.rows().size()
                      + (rows.rows().size() == 1 ? " group, " : " groups, ")
                      + rows.rowsWithCentreInside()
                      + " have their mean or median in the length asked for; "
                      + rows.rowsOnlyOverlapping()
                      + " only reach into it or give no middle.");
    }

    /** Address of the same question among groups whose mean or median lies in the lengths. */
    public String centreOnly() {
      return form.address().with("match", "centre").at(PagePaths.POOLED);
    }

    /** Series followed too shortly for the outcome, if there are any. */
    public Optional<TooShort> tooShort() {
      return outcome.flatMap(
          asked ->
              selection.flatMap(
                  rows -> TooShort.of(PagePaths.POOLED, form.address(), asked, rows)));
    }

    /** Clocks to choose from, where there are several. */
    public List<Selection.Present> clocks() {
      return selection.map(Selection::clocks).filter(c -> c.size() > 1).orElse(List.of());
    }

    /** The clock that is taken. */
    public String clock() {
      return selection.flatMap(Selection::clock).map(Clock::code).orElse("");
    }
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.POOLED, this::show);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "result/PooledPage", view(address));
  }

  private View view(Address address) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.POOLED, address, request, found);
    String filters =
        address
            .without(List.of("clock", "least", QuestionAddress.DEFINITION))
            .at(PagePaths.STUDIES);
    Optional<Question> question = QuestionAddress.question(address);
    if (question.isEmpty()) {
      return new View(
          sites.of("Pooled results", Site.Section.POOLED),
          form,
          Optional.empty(),
          "",
          List.of(),
          Optional.empty(),
          List.of(),
          "",
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          Optional.empty(),
          "",
          filters,
          Definitions.NONE);
    }
    return answered(form, filters, answers.ask(question.get()));
  }

  private View answered(FilterForm form, String filters, Answer answer) {
    String words = QuestionWords.of(answer.question());
    Optional<Result> result = answer.result();
    return new View(
        sites.of(words, Site.Section.POOLED),
        form,
        Optional.of(answer.question().outcome()),
        words,
        result.map(r -> Blocks.told(answer, r)).orElse(List.of()),
        result.map(r -> drawn(form.address(), AnswerForest.of(answer, r, edition))),
        result.map(Statistics::of).orElse(List.of()),
        result.map(r -> ModelWords.model(r.plan())).orElse(""),
        PooledNotes.warnings(answer),
        result.map(PooledNotes::aboutNumbers).orElse(List.of()),
        result.map(PooledNotes::aboutStudies).orElse(List.of()),
        PooledNotes.leftOut(answer.selection()),
        Optional.of(answer.selection()),
        answer.plan().map(ObjectNode::toPrettyString).orElse(""),
        filters,
        Definitions.of(PagePaths.POOLED, form.address(), answers, answer.question()));
  }

  private static Drawn drawn(Address address, Forest forest) {
    return new Drawn(
        ForestDrawing.draw(forest, Medium.PAGE).get(0).inline(),
        ForestDrawing.draw(forest, Medium.PHONE).get(0).inline(),
        ForestTable.of(forest).lines(),
        TakeFigure.of("/api/v1/forest", address, forest));
  }
}
