package gapwise.course;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.curves.CurveResult;
import gapwise.analysis.curves.CurvesResult;
import gapwise.analysis.curves.PooledCurveResult;
import gapwise.answer.AnswerCurves;
import gapwise.answer.AnswerForest;
import gapwise.answer.Cited;
import gapwise.answer.Edition;
import gapwise.answer.People;
import gapwise.answer.QuestionWords;
import gapwise.evidence.vocabulary.Clock;
import gapwise.figure.FigureProvenance;
import gapwise.figure.curve.Curve;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.value.Limits;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The curves of methods in one field: pooled ones, and that of a method with one curve as it is.
 */
public final class CourseFigure {
  private static final double LEVEL = 0.95;

  private final CourseAnswer answer;
  private final List<MethodCourse> drawn;
  private final double longest;

  private CourseFigure(CourseAnswer answer, List<MethodCourse> drawn) {
    this.answer = answer;
    this.drawn = drawn;
    this.longest = drawn.stream().mapToDouble(CourseFigure::end).max().orElse(1);
  }

  /** The figure; empty where no method has a curve that came out. */
  public static Optional<CurveFigure> of(CourseAnswer answer, Edition edition) {
    List<MethodCourse> able =
        answer.methods().stream()
            .filter(method -> method.pooled().isPresent() || method.alone().isPresent())
            .toList();
    List<MethodCourse> some = able.subList(0, Math.min(able.size(), CurveFigure.MOST_CURVES));
    return some.isEmpty()
        ? Optional.empty()
        : Optional.of(new CourseFigure(answer, some).figure(able.size(), edition));
  }

  private CurveFigure figure(int methods, Edition edition) {
    String reached = CourseTold.reached(answer);
    List<String> sentences =
        new ArrayList<>(drawn.stream().map(one -> CourseTold.sentence(one, reached)).toList());
    if (drawn.size() < methods) {
      sentences.add(say("course.more-methods", Map.of("drawn", drawn.size(), "methods", methods)));
    }
    List<SelectedRow> rows =
        drawn.stream().flatMap(one -> one.curves().stream()).map(CurveTaken::row).toList();
    return new CurveFigure(
        say("course.title", Map.of("question", QuestionWords.of(answer.question()))),
        sentences,
        true,
        say("course.axis", Map.of("reached", reached)),
        answer
            .selection()
            .clock()
            .map(Clock::label)
            .map(clock -> say("course.months-from", Map.of("clock", clock)))
            .orElseGet(() -> say("course.months")),
        drawn.stream().map(this::curve).toList(),
        cautions(),
        provenance(rows, edition));
  }

  private List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    cautions.add(say("answer.curves-few-left"));
    cautions.add(say("answer.curves-rebuilt"));
    if (drawn.size() > 1) {
      cautions.add(AnswerCurves.NO_COMPARISON);
    }
    cautions.addAll(CourseTold.cautions(answer));
    cautions.add(AnswerForest.CAUTIONS.get(0));
    return cautions;
  }

  private FigureProvenance provenance(List<SelectedRow> rows, Edition edition) {
    return new FigureProvenance(
            People.series(rows),
            People.of(rows),
            say(
                drawn.stream().anyMatch(one -> one.pooled().isPresent())
                    ? "course.model"
                    : "course.model-alone"),
            edition.words(answer.selection().dataSha256()),
            edition.date(),
            rows.stream().anyMatch(row -> row.study().invented()))
        .citing(Cited.of(rows));
  }

  private static double end(MethodCourse method) {
    return method
        .pooled()
        .map(pooled -> pooled.times().get(pooled.times().size() - 1).time())
        .orElseGet(() -> longest(method.alone().orElseThrow()));
  }

  private static double longest(CurveResult curve) {
    return curve.individuals().stream().mapToDouble(CurveResult.Individual::time).max().orElse(0);
  }

  private Curve curve(MethodCourse method) {
    return new Curve(
        method.method().shortLabel(),
        method.pooled().isPresent(),
        method
            .pooled()
            .map(CourseFigure::pooled)
            .orElseGet(() -> alone(method.alone().orElseThrow())),
        end(method),
        List.of(),
        atRisk(method));
  }

  private static List<Curve.Step> pooled(PooledCurveResult pooled) {
    List<Curve.Step> steps = new ArrayList<>();
    double share = 1;
    for (PooledCurveResult.At at : pooled.times()) {
      share = Math.min(share, at.survival());
      steps.add(new Curve.Step(at.time(), share, limits(at.lower(), at.upper())));
    }
    return steps;
  }

  private static List<Curve.Step> alone(CurveResult curve) {
    return curve.fallsWithLimits(LEVEL).stream()
        .map(
            at ->
                new Curve.Step(at.time(), at.survival().orElse(0), limits(at.lower(), at.upper())))
        .toList();
  }

  private static Optional<Limits> limits(OptionalDouble lower, OptionalDouble upper) {
    return lower.isPresent() && upper.isPresent()
        ? Optional.of(new Limits(lower.getAsDouble(), upper.getAsDouble()))
        : Optional.empty();
  }

  private List<Curve.AtRisk> atRisk(MethodCourse method) {
    List<CurveResult> curves =
        method.result().flatMap(result -> result.part(CurvesResult.class)).orElseThrow().curves();
    return CurveFigure.marks(longest).stream()
        .filter(mark -> mark <= end(method))
        .map(mark -> new Curve.AtRisk(mark, followed(curves, mark)))
        .toList();
  }

  private static int followed(List<CurveResult> curves, double mark) {
    return (int)
        curves.stream()
            .flatMap(curve -> curve.individuals().stream())
            .filter(one -> one.time() >= mark)
            .count();
  }
}
