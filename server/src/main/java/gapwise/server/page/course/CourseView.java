package gapwise.server.page.course;

import gapwise.answer.AnswerForest;
import gapwise.course.CourseAnswer;
import gapwise.course.CourseTold;
import gapwise.course.Courses;
import gapwise.course.CurveTaken;
import gapwise.course.MethodCourse;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.curve.CurveFigure;
import gapwise.problem.Problem;
import gapwise.selection.HowRead;
import gapwise.selection.LeftOut;
import gapwise.selection.Selection;
import gapwise.server.address.Address;
import gapwise.server.address.CourseAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.PlainWarnings;
import gapwise.server.page.part.QuestionParts;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.page.part.UnstatedClocks;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What the page of an event over time shows: a time asked about, or the choice of one. */
public sealed interface CourseView {
  /** What the form sends along unseen: all that it has no field for. */
  List<String> OF_FORM =
      List.of("outcome", "method", "from", "to", "least", "clock", CourseAddress.HORIZON, "page");

  /** The frame of the page. */
  Site site();

  /** Filters and outcomes to choose from. */
  FilterForm form();

  /** What narrows the result, each with the address without it. */
  default List<FilterForm.On> on() {
    return QuestionParts.all(PagePaths.OVER_TIME, form().address());
  }

  /** The times that can be asked about. */
  default List<FilterForm.Choice> times() {
    return form().families().stream()
        .flatMap(family -> family.outcomes().stream())
        .filter(choice -> Courses.isTime(Outcome.of(choice.value())))
        .toList();
  }

  /** The same with an address each. */
  default String href(FilterForm.Choice time) {
    return form().address().with("outcome", time.value()).at(PagePaths.OVER_TIME);
  }

  /** Names and values that the form sends along unseen. */
  default List<Map.Entry<String, String>> hidden() {
    return form().address().without(OF_FORM).parameters().entrySet().stream()
        .flatMap(e -> e.getValue().stream().map(value -> Map.entry(e.getKey(), value)))
        .toList();
  }

  /** No time is named, so one must be chosen first. */
  record Unasked(Site site, FilterForm form, Optional<String> noTime) implements CourseView {}

  /**
   * A time that was asked about, whose answer is not there yet.
   *
   * @param question the question in words
   * @param awaited what is worked out
   */
  record Working(Site site, FilterForm form, String question, Awaited awaited)
      implements CourseView {}

  /**
   * A time that was asked about.
   *
   * @param question the question in words
   * @param answer what is known
   * @param figure the curves; empty where there are none
   * @param lines the same as a table
   * @param leftOut what was left out, by reason
   */
  record Asked(
      Site site,
      FilterForm form,
      String question,
      CourseAnswer answer,
      Optional<Drawn> figure,
      List<Line> lines,
      List<Reason> leftOut)
      implements CourseView {

    /** The answer in sentences, one a method. */
    public List<String> sentences() {
      String reached = reached();
      return answer.methods().stream().map(one -> CourseTold.sentence(one, reached)).toList();
    }

    /** What patients have done when the time ends, such as "had united". */
    public String reached() {
      return CourseTold.reached(answer);
    }

    /** What stands beside it. */
    public List<String> cautions() {
      List<String> ofFigure = figure.map(drawn -> drawn.curves().cautions()).orElse(List.of());
      return ofFigure.isEmpty() ? AnswerForest.CAUTIONS : ofFigure;
    }

    /** What must be known of the groups taken together, and of rebuilding their curves. */
    public List<String> aboutSeries() {
      return answer.selection().notes().stream().map(Problem::message).toList();
    }

    /** What came up when curves were rebuilt, by method. */
    public List<String> aboutCurves() {
      return answer.methods().stream().flatMap(Asked::about).distinct().toList();
    }

    private static Stream<String> about(MethodCourse method) {
      String name = method.method().shortLabel();
      return Stream.concat(
          method.problems().stream().map(problem -> name + ": " + problem.line()),
          method.result().stream()
              .flatMap(result -> result.warnings().stream())
              .map(warning -> PlainWarnings.ofCurves(warning, name)));
    }

    /** How the studies behind the curves were read. */
    public ReadStands stands() {
      return ReadStands.of(
          PagePaths.OVER_TIME,
          form.address(),
          HowRead.ofRows(answer.curves().stream().map(CurveTaken::row).toList()));
    }

    /** The outcome. */
    public Outcome outcome() {
      return answer.question().outcome();
    }

    /** Groups that do not say from when they count, if there are any. */
    public Optional<UnstatedClocks> unstatedClocks() {
      return UnstatedClocks.of(PagePaths.OVER_TIME, form.address(), answer.selection());
    }

    /** Clocks to choose from, where there are several. */
    public List<Selection.Present> clocks() {
      return answer.selection().clocks().size() > 1 ? answer.selection().clocks() : List.of();
    }

    /** Whether a clock is the one that is taken. */
    public boolean takes(Selection.Present clock) {
      return answer.selection().clock().map(Clock::code).filter(clock.code()::equals).isPresent();
    }

    /** Address of a download. */
    public String download(String name) {
      return form.address().at("/api/v1/" + name);
    }

    /** Address of the means and medians of the same question. */
    public String pooled() {
      Address pooled = form.address().without(List.of(CourseAddress.HORIZON));
      return pooled.at(PagePaths.POOLED);
    }

    /** Plans by method, as text. */
    public List<Map.Entry<String, String>> plans() {
      return answer.methods().stream()
          .map(one -> Map.entry(one.method().label(), one.plan().toPrettyString()))
          .toList();
    }
  }

  /** The curves, drawn and with their files. */
  record Drawn(CurveFigure curves, TwoWidths drawing, TakeFigure take) {}

  /**
   * One method.
   *
   * @param method its name
   * @param code its code
   * @param counted of how many curves, studies and patients
   * @param by the share by each month
   * @param mean the restricted mean
   * @param alone address of the method by itself
   * @param curves its evidence
   */
  record Line(
      String method,
      String code,
      String counted,
      List<Cell> by,
      Cell mean,
      String alone,
      List<Source> curves) {}

  /** A number and what it rests on. */
  record Cell(String head, String value, String rests) {}

  /** One curve that entered, with the address of its study. */
  record Source(String label, String href, String words) {}

  /** Groups left out for one reason, with how many more there are than are named. */
  record Reason(String message, List<LeftOut> named, Optional<String> more) {}
}
