package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.curves.CurveResult;
import gapwise.analysis.curves.CurvesResult;
import gapwise.analysis.curves.PooledCurveResult;
import gapwise.analysis.result.Result;
import gapwise.figure.FigureProvenance;
import gapwise.figure.curve.Curve;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.value.Limits;
import gapwise.figure.value.SeriesCount;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** The curves of a result about times to an event: of single studies and pooled ones. */
public final class AnswerCurves {
  /** What must stand beside curves of groups that differ. */
  public static final String NO_COMPARISON = say("answer.curves-no-comparison");

  private final Result result;
  private final boolean rising;

  private AnswerCurves(Result result) {
    this.result = result;
    this.rising = result.plan().path("as").asText().equals("cumulative-events");
  }

  /** The figure; empty if the result has no curves. */
  public static Optional<CurveFigure> of(Result result, Edition edition) {
    return result
        .part(CurvesResult.class)
        .map(CurvesResult::curves)
        .filter(curves -> !curves.isEmpty())
        .map(curves -> new AnswerCurves(result).figure(curves, edition));
  }

  private CurvesResult made() {
    return result.part(CurvesResult.class).orElseThrow();
  }

  private CurveFigure figure(List<CurveResult> curves, Edition edition) {
    List<PooledCurveResult> pooled =
        made().pooledCurves().orElse(List.of()).stream()
            .filter(each -> !each.times().isEmpty())
            .toList();
    double longest = curves.stream().mapToDouble(AnswerCurves::longest).max().orElse(1);
    List<Curve> singles = curves.stream().map(curve -> single(curve, longest)).toList();
    boolean all = singles.size() + pooled.size() <= CurveFigure.MOST_CURVES;
    List<Curve> together =
        pooled.stream().map(each -> together(each, curves, longest, all)).toList();
    List<Curve> drawn =
        Stream.concat(all || together.isEmpty() ? singles.stream() : Stream.of(), together.stream())
            .limit(CurveFigure.MOST_CURVES)
            .toList();
    String title = result.plan().path("title").asText("");
    return new CurveFigure(
        title.isBlank() ? say("answer.curves-title") : title,
        sentences(pooled, drawn.size(), singles.size() + together.size()),
        rising,
        say(rising ? "answer.curves-with-event" : "answer.curves-without-event"),
        say("answer.curves-time"),
        drawn,
        cautions(drawn.size()),
        provenance(edition));
  }

  private static double longest(CurveResult curve) {
    return curve.individuals().stream().mapToDouble(CurveResult.Individual::time).max().orElse(0);
  }

  private static Curve single(CurveResult curve, double longest) {
    return new Curve(
        name(curve),
        false,
        curve.falls().stream()
            .map(fall -> new Curve.Step(fall.time(), fall.survival(), Optional.empty()))
            .toList(),
        longest(curve),
        curve.individuals().stream()
            .filter(one -> !one.event())
            .map(CurveResult.Individual::time)
            .distinct()
            .toList(),
        atRisk(List.of(curve), longest(curve), longest));
  }

  private static String name(CurveResult curve) {
    String name =
        String.join(", ", Stream.concat(curve.study().stream(), curve.group().stream()).toList());
    return name.isBlank() ? say("answer.curve-of-all") : name;
  }

  private static Curve together(
      PooledCurveResult pooled, List<CurveResult> curves, double longest, boolean besideOthers) {
    List<Curve.Step> steps = new ArrayList<>();
    double share = 1;
    for (PooledCurveResult.At at : pooled.times()) {
      share = Math.min(share, at.survival());
      Optional<Limits> limits =
          at.lower().isPresent() && at.upper().isPresent()
              ? Optional.of(new Limits(at.lower().getAsDouble(), at.upper().getAsDouble()))
              : Optional.empty();
      steps.add(new Curve.Step(at.time(), share, limits));
    }
    double end = steps.get(steps.size() - 1).time();
    List<CurveResult> own =
        curves.stream()
            .filter(curve -> pooled.group().isEmpty() || curve.group().equals(pooled.group()))
            .toList();
    return new Curve(
        pooled
            .group()
            .map(
                name ->
                    besideOthers ? say("answer.curve-pooled-group", Map.of("group", name)) : name)
            .orElseGet(() -> say("answer.pooled")),
        true,
        steps,
        end,
        List.of(),
        atRisk(own, end, longest));
  }

  private static List<Curve.AtRisk> atRisk(List<CurveResult> curves, double end, double longest) {
    return CurveFigure.marks(longest).stream()
        .filter(mark -> mark <= end)
        .map(mark -> new Curve.AtRisk(mark, followed(curves, mark)))
        .toList();
  }

  private static int followed(List<CurveResult> curves, double mark) {
    DoubleStream times =
        curves.stream()
            .flatMap(curve -> curve.individuals().stream())
            .mapToDouble(CurveResult.Individual::time);
    return (int) times.filter(time -> time >= mark).count();
  }

  private List<String> sentences(List<PooledCurveResult> pooled, int drawn, int curves) {
    List<String> sentences = new ArrayList<>();
    for (PooledCurveResult each : pooled) {
      sentences.add(sentence(each));
    }
    if (drawn < curves) {
      sentences.add(say("answer.curves-drawn", Map.of("drawn", drawn, "curves", curves)));
    }
    return sentences;
  }

  private static String sentence(PooledCurveResult pooled) {
    Map<String, Object> values = new HashMap<>();
    values.put("studies", pooled.studies());
    values.put("patients", pooled.patients());
    pooled.group().ifPresent(group -> values.put("group", group));
    boolean one = pooled.group().isPresent();
    if (pooled.median().isEmpty()) {
      return say(one ? "answer.curve-under-half-of-group" : "answer.curve-under-half", values);
    }
    values.put("median", median(pooled));
    return say(one ? "answer.curve-half-of-group" : "answer.curve-half", values);
  }

  private static String median(PooledCurveResult pooled) {
    String value = Told.number(pooled.median().getAsDouble());
    return pooled.medianLower().isPresent() && pooled.medianUpper().isPresent()
        ? say(
            "answer.curve-median",
            Map.of(
                "median", value,
                "lower", Told.number(pooled.medianLower().getAsDouble()),
                "upper", Told.number(pooled.medianUpper().getAsDouble())))
        : value;
  }

  private List<String> cautions(int drawn) {
    List<String> cautions = new ArrayList<>(List.of(say("answer.curves-few-left")));
    if (result.plan().path("task").asText().equals("reconstruct-curve")) {
      cautions.add(say("answer.curves-rebuilt"));
    }
    if (drawn > 1) {
      cautions.add(NO_COMPARISON);
    }
    cautions.add(AnswerForest.CAUTIONS.get(0));
    return cautions;
  }

  private FigureProvenance provenance(Edition edition) {
    boolean pooled = made().pooledCurves().isPresent();
    long patients = Math.round(result.data().participants().orElse(0));
    return new FigureProvenance(
        SeriesCount.of(made().curves().size()),
        People.patients(patients),
        say(pooled ? "answer.curves-model-pooled" : "answer.curves-model"),
        edition.words(result.data().sha256()),
        edition.date(),
        false);
  }
}
