package gapwise.answer;

import gapwise.analysis.curves.CurveResult;
import gapwise.analysis.curves.CurvesResult;
import gapwise.analysis.curves.PooledCurveResult;
import gapwise.analysis.result.Result;
import gapwise.figure.FigureProvenance;
import gapwise.figure.curve.Curve;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.value.Limits;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** The curves of a result about times to an event: of single studies and pooled ones. */
public final class AnswerCurves {
  /** What must stand beside curves of groups that differ. */
  public static final String NO_COMPARISON =
      "Curves side by side are no comparison unless chance decided who was in which group.";

  private static final String REBUILT =
      "Times were put back together from published curves: they carry the errors of the reading,"
          + " which no limits here know of.";
  private static final String FEW_LEFT =
      "Towards its end a curve rests on few patients; what lies beyond its end is not known.";

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
        title.isBlank() ? "Time to the event" : title,
        sentences(pooled, drawn.size(), singles.size() + together.size()),
        rising,
        rising ? "With the event, of 100" : "Without the event, of 100",
        "Time, in the unit of the data",
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
    return name.isBlank() ? "All patients" : name;
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
        pooled.group().map(name -> besideOthers ? name + ", pooled" : name).orElse("Pooled"),
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
      String of = each.group().map(name -> name + ": ").orElse("");
      String size = each.studies() + " studies with " + each.patients() + " patients";
      sentences.add(
          each.median().isPresent()
              ? of + "half had the event by " + median(each) + ", pooled over " + size + "."
              : of + "fewer than half had the event by the end, pooled over " + size + ".");
    }
    if (drawn < curves) {
      sentences.add(
          drawn
              + " of "
              + curves
              + " curves are drawn, since more cannot be told apart; the result lists all.");
    }
    return sentences;
  }

  private static String median(PooledCurveResult pooled) {
    String value = Told.number(pooled.median().getAsDouble());
    return pooled.medianLower().isPresent() && pooled.medianUpper().isPresent()
        ? value
            + " (95 % interval "
            + Told.number(pooled.medianLower().getAsDouble())
            + " to "
            + Told.number(pooled.medianUpper().getAsDouble())
            + ")"
        : value;
  }

  private List<String> cautions(int drawn) {
    List<String> cautions = new ArrayList<>(List.of(FEW_LEFT));
    if (result.plan().path("task").asText().equals("reconstruct-curve")) {
      cautions.add(REBUILT);
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
        made().curves().size(),
        patients + " patients",
        pooled
            ? "Kaplan-Meier curves, pooled by random effects of the shares that pass each interval"
            : "Kaplan-Meier curves",
        edition.words(result.data().sha256()),
        edition.date(),
        false);
  }
}
