package gapwise.course;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Runner;
import gapwise.answer.QuestionWords;
import gapwise.budget.Memory;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.Reason;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import gapwise.selection.Selector;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** The door of this room: answers a question of a time by its curves. Safe for many threads. */
public final class Courses {
  /** Months to which restricted means reach unless a person says otherwise; common practice. */
  public static final int USUAL_HORIZON = 12;

  private final Selector selector;
  private final Function<Question, Selection> numbers;
  private final Memory.Kept<Asked, CourseAnswer> answers;

  private record Asked(Question question, int horizon) {}

  /**
   * @param selector chooses from one state of the evidence base
   * @param numbers answers a question with the numbers that papers print, in the same state
   */
  public Courses(Selector selector, Function<Question, Selection> numbers) {
    this(selector, numbers, Memory.NONE);
  }

  /**
   * @param memory keeps the answers
   */
  public Courses(Selector selector, Function<Question, Selection> numbers, Memory memory) {
    this.selector = Objects.requireNonNull(selector, "selector");
    this.numbers = Objects.requireNonNull(numbers, "numbers");
    this.answers =
        memory.keep(
            this::askAnew, answer -> answer.selection().rows().size() + answer.leftOut().size());
  }

  /** Whether curves can show an outcome. */
  public static boolean isTime(Outcome outcome) {
    return outcome.kind() == Outcome.Kind.TIME;
  }

  /**
   * The answer.
   *
   * @param question about a time to an event; others have no curve
   * @param horizon months to which restricted means reach, at least 1
   */
  public CourseAnswer ask(Question question, int horizon) {
    return answers.of(new Asked(question, horizon));
  }

  /** Whether the answer is there already. */
  public boolean has(Question question, int horizon) {
    return answers.has(new Asked(question, horizon));
  }

  private CourseAnswer askAnew(Asked asked) {
    Question question = asked.question();
    int horizon = asked.horizon();
    Outcome outcome = question.outcome();
    Selection selection = selector.through(new CurvesInPlace(outcome)).select(question).byMethod();
    List<LeftOut> leftOut = new ArrayList<>(selection.leftOut());
    Map<Method, List<CurveTaken>> byMethod = new LinkedHashMap<>();
    for (SelectedRow row : selection.rows()) {
      Optional<CurveTaken> taken =
          CurvesInPlace.of(row.study(), row.arm().id(), outcome).flatMap(c -> taken(row, c));
      if (taken.isPresent()) {
        byMethod
            .computeIfAbsent(row.arm().method().principal(), method -> new ArrayList<>())
            .add(taken.get());
      } else {
        leftOut.add(leftOut(row, Reason.Plain.CURVE_WITHOUT_PATIENTS));
      }
    }
    for (SelectedRow row : numbers.apply(question).byMethod().rows()) {
      if (CurvesInPlace.of(row.study(), row.arm().id(), outcome).isEmpty()) {
        leftOut.add(leftOut(row, Reason.Plain.NO_CURVE));
      }
    }
    return new CourseAnswer(selection, horizon, methods(question, byMethod, horizon), leftOut);
  }

  private static Optional<CurveTaken> taken(SelectedRow row, PublishedCurve curve) {
    OptionalInt own = curve.start();
    OptionalInt patients = own.isPresent() ? own : row.speaksOf();
    return patients.isPresent() && patients.getAsInt() > 0
        ? Optional.of(new CurveTaken(row, curve, patients.getAsInt(), own.isEmpty()))
        : Optional.empty();
  }

  private static LeftOut leftOut(SelectedRow row, Reason reason) {
    return new LeftOut(row.study().id(), row.arm().id(), row.label(), reason);
  }

  private static List<MethodCourse> methods(
      Question question, Map<Method, List<CurveTaken>> byMethod, int horizon) {
    List<MethodCourse> methods = new ArrayList<>();
    for (Method method : Method.vocabulary().all()) {
      List<CurveTaken> curves = byMethod.getOrDefault(method, List.of());
      if (!curves.isEmpty()) {
        String words = QuestionWords.of(question);
        String title = say("course.title", Map.of("question", method.label() + ": " + words));
        ObjectNode plan = CoursePlan.of(title, curves, horizon);
        methods.add(
            new MethodCourse(
                method,
                curves,
                horizon,
                plan,
                Runner.withoutEvidence().run(plan, Optional.empty())));
      }
    }
    return methods;
  }
}
