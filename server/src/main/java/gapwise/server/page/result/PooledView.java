package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.AnswerForest;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Told;
import gapwise.course.Courses;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.ForestTable;
import gapwise.selection.HowRead;
import gapwise.selection.LeftOut;
import gapwise.selection.Selection;
import gapwise.server.address.CarriedQuestion;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.ByDetail;
import gapwise.server.page.part.Definitions;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.Offer;
import gapwise.server.page.part.OutcomeChoice;
import gapwise.server.page.part.QuestionParts;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.RiskOfBias;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TooShort;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.page.part.UnstatedClocks;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What the page of pooled results shows: a question asked, or the choice of one. */
public sealed interface PooledView {
  /** The frame of the page. */
  Site site();

  /** Filters and outcomes to choose from. */
  FilterForm form();

  /** What narrows the result, each with the address without it. */
  default List<FilterForm.On> on() {
    List<FilterForm.On> on = new ArrayList<>(QuestionParts.all(PagePaths.POOLED, form().address()));
    QuestionParts.split(PagePaths.POOLED, form().address()).ifPresent(on::add);
    return on;
  }

  /** The outcomes of the family that is asked for, one of which is pooled at a time. */
  default List<OutcomeChoice> outcomes() {
    return OutcomeChoice.one(PagePaths.POOLED, form());
  }

  /** Details of the method of which one word may be taken alone. */
  default List<ByDetail> byDetail() {
    return ByDetail.of(PagePaths.POOLED, form());
  }

  /** Address of the studies with the same filters. */
  default String studies() {
    return CarriedQuestion.of(form().address()).at(PagePaths.STUDIES);
  }

  /** No outcome is named, so one must be chosen first. */
  record Unasked(Site site, FilterForm form) implements PooledView {}

  /**
   * An outcome that was asked for, whose answer is not there yet.
   *
   * @param question the question in words
   * @param awaited what is worked out
   */
  record Working(Site site, FilterForm form, String question, Awaited awaited)
      implements PooledView {}

  /**
   * An outcome that was asked for.
   *
   * @param question the question in words
   * @param finding what came of it
   * @param warnings what must be known beside it, in words
   * @param risk the risk of bias of the series
   * @param leftOut what was left out, by reason
   * @param selection the rows
   * @param plan the plan as text; empty where no row is left to analyse
   * @param definitions how the series define the outcome
   */
  record Asked(
      Site site,
      FilterForm form,
      String question,
      Finding finding,
      List<String> warnings,
      RiskOfBias risk,
      List<Reason> leftOut,
      Selection selection,
      Optional<String> plan,
      Definitions definitions)
      implements PooledView {

    /** How the studies behind it were read. */
    public ReadStands stands() {
      return ReadStands.of(PagePaths.POOLED, form.address(), HowRead.ofRows(selection.rows()));
    }

    /** The outcome. */
    public Outcome outcome() {
      return selection.question().outcome();
    }

    /** Address of a download of this result. */
    public String download(String name) {
      return form.address().at("/api/v1/" + name);
    }

    /** Address of the same question over the length of missing bone. */
    public String bySize() {
      return form.address().at(PagePaths.BY_SIZE);
    }

    /** Address of the same question over time; empty for what is no time. */
    public Optional<String> overTime() {
      return Optional.of(form.address().at(PagePaths.OVER_TIME))
          .filter(href -> Courses.isTime(outcome()));
    }

    /** Address of the same question with small series against large ones. */
    public String funnel() {
      return form.address().at(PagePaths.FUNNEL);
    }

    /** What stands beside every result. */
    public List<String> cautions() {
      return AnswerForest.CAUTIONS;
    }

    /** How many of the groups only reach into the lengths asked for; empty where none does. */
    public Optional<String> reachingIn() {
      return Optional.of(selection)
          .filter(rows -> rows.rowsOnlyOverlapping() > 0)
          .map(
              rows ->
                  say(
                      "page.reaching-in",
                      Map.of(
                          "groups",
                          rows.rows().size(),
                          "inside",
                          rows.rowsWithCentreInside(),
                          "reaching",
                          rows.rowsOnlyOverlapping())));
    }

    /** Address of the same question among groups whose mean or median lies in the lengths. */
    public String centreOnly() {
      return form.address().with("match", "centre").at(PagePaths.POOLED);
    }

    /** The same question with other numbers of the same series. */
    public List<Offer> offers() {
      return Offer.all(PagePaths.POOLED, form.address(), selection);
    }

    /** Series followed too shortly for the outcome, if there are any. */
    public Optional<TooShort> tooShort() {
      return TooShort.of(PagePaths.POOLED, form.address(), outcome(), selection);
    }

    /** Groups that do not say from when they count, if there are any. */
    public Optional<UnstatedClocks> unstatedClocks() {
      return UnstatedClocks.of(PagePaths.POOLED, form.address(), selection);
    }

    /** Clocks to choose from, where there are several. */
    public List<Selection.Present> clocks() {
      return selection.clocks().size() > 1 ? selection.clocks() : List.of();
    }

    /** Whether a clock is the one that is taken. */
    public boolean takes(Selection.Present clock) {
      return selection.clock().map(Clock::code).filter(clock.code()::equals).isPresent();
    }
  }

  /** What came of a question. */
  sealed interface Finding {}

  /** No series can be pooled. */
  record NothingUsable() implements Finding {}

  /**
   * Something pooled.
   *
   * @param told the answer in sentences, one method or word of a detail after another
   * @param methods the same side by side; empty where there are not several methods
   * @param caution what must stand above several of them
   * @param figure the figure
   * @param statistics the numbers of heterogeneity
   * @param formula address of its formula
   * @param aboutNumbers what must be known of the pooled numbers
   * @param aboutStudies notes about single studies
   * @param alert what differs between the groups of what stands side by side
   */
  record Pooled(
      List<Told> told,
      Optional<MethodsView> methods,
      String caution,
      Drawn figure,
      List<Statistics.Line> statistics,
      String formula,
      List<String> aboutNumbers,
      List<String> aboutStudies,
      Optional<ComparisonAlert> alert)
      implements Finding {

    /** What the notes about single studies are called. */
    public String headingOfNotes() {
      return say("page.heading-of-notes", Map.of("notes", aboutStudies.size()));
    }

    /** Notes that are shown, and how many more there are. */
    public List<String> notes() {
      return Stream.concat(
              PooledNotes.some(aboutStudies).stream(), PooledNotes.more(aboutStudies).stream())
          .toList();
    }

    /** Said where methods stand side by side. */
    public Optional<String> noComparison() {
      return told.size() > 1 ? Optional.of(caution) : Optional.empty();
    }
  }

  /** The figure, its rows as a table, its files, and which series it shows where not all. */
  record Drawn(
      TwoWidths drawing, List<ForestTable.Line> lines, TakeFigure take, Optional<String> some) {

    /** Where the series were published, each once. */
    public List<String> sources() {
      return lines.stream()
          .map(ForestTable.Line::citation)
          .filter(citation -> !citation.isBlank())
          .distinct()
          .toList();
    }
  }

  /** Groups left out for one reason. */
  record Reason(String message, List<LeftOut> groups) {
    /** Those that are named. */
    public List<LeftOut> named() {
      return PooledNotes.some(groups);
    }

    /** How many more there are; empty where all are named. */
    public Optional<String> more() {
      return PooledNotes.more(groups);
    }
  }
}
