package gapwise.analysis.moderators;

import gapwise.analysis.pooling.MeanOfTrueValues;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.RowValue;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.regression.Predicted;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * The predictions a plan asks of a regression: at single values of the moderators, and along one of
 * them.
 *
 * @param points single values, in the order of the plan
 * @param curves values along a column, in the order of the plan
 */
record ModeratorPredictions(List<Map<String, RowValue>> points, List<Along> curves) {
  private static final String FIELD = "predictions";

  /** Values along one column. */
  record Along(String column, List<Map<String, RowValue>> points) {}

  ModeratorPredictions {
    points = List.copyOf(points);
    curves = List.copyOf(curves);
  }

  /**
   * Reads what is asked.
   *
   * @throws WrongInputException with everything that does not fit the moderators
   */
  static ModeratorPredictions of(
      List<AskedPrediction> asked, ModeratorDesign design, ModeratorValues values) {
    requirePoints(asked, design.moderators().size());
    Problems problems = new Problems();
    List<Map<String, RowValue>> points = new ArrayList<>();
    List<Along> curves = new ArrayList<>();
    for (int i = 0; i < asked.size(); i++) {
      String where = FIELD + "[" + i + "]";
      if (asked.get(i) instanceof AskedPrediction.Along line) {
        along(line, where, values, problems).ifPresent(curves::add);
      } else if (asked.get(i) instanceof AskedPrediction.At point) {
        points.add(values.complete(point.values(), where, problems));
      }
    }
    if (problems.isEmpty()) {
      points.forEach(point -> finite(design, point, problems));
      curves.forEach(curve -> curve.points().forEach(point -> finite(design, point, problems)));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new ModeratorPredictions(points, curves);
  }

  private static void requirePoints(List<AskedPrediction> asked, int moderators) {
    Work.require(
        Limit.ITEMS,
        asked.stream().mapToLong(AskedPrediction::points).sum() * moderators,
        FIELD,
        "Each point holds a value of each moderator; ask for fewer curves, or fewer points of"
            + " each.");
  }

  private static Optional<Along> along(
      AskedPrediction.Along asked, String where, ModeratorValues values, Problems problems) {
    String column = asked.column();
    if (!values.takesNumbers(column)) {
      problems.add(
          where + ".column",
          "unknown-column",
          "'" + column + "' is no moderator of numbers in this plan");
      return Optional.empty();
    }
    Map<String, RowValue> given = new LinkedHashMap<>(asked.at());
    values.complete(given, where + ".at", problems);
    if (!problems.isEmpty()) {
      return Optional.empty();
    }
    long last = asked.points() - 1;
    List<Map<String, RowValue>> points = new ArrayList<>();
    for (int i = 0; i <= last; i++) {
      Work.check();
      double share = (double) i / last;
      double value = i == last ? asked.to() : (1 - share) * asked.from() + share * asked.to();
      given.put(column, new RowValue.Number(value));
      points.add(values.complete(given, where, problems));
    }
    return Optional.of(new Along(column, points));
  }

  private static void finite(
      ModeratorDesign design, Map<String, RowValue> cells, Problems problems) {
    if (!Arrays.stream(design.values(cells)).allMatch(x -> Math.abs(x) < 1e100)) {
      problems.add(
          FIELD,
          "number-out-of-range",
          "a value is so large that its terms cannot be reckoned with: " + cells);
    }
  }

  /** How the values are told; the same for all predictions. */
  private record Teller(
      ModeratedStudies<?> studies, FittedMean fit, ModeratorValues values, BackTransform back) {
    static Teller of(ModeratedStudies<?> studies, FittedMean fit) {
      return new Teller(studies, fit, studies.values(), studies.back());
    }
  }

  /** The single predictions; empty if none are asked for. */
  Optional<List<RegressionResult.Prediction>> points(ModeratedStudies<?> studies, FittedMean fit) {
    if (points.isEmpty()) {
      return Optional.empty();
    }
    Teller teller = Teller.of(studies, fit);
    return Optional.of(points.stream().map(point -> predicted(teller, point)).toList());
  }

  /** The predictions along columns; empty if none are asked for. */
  Optional<List<RegressionResult.Curve>> curves(ModeratedStudies<?> studies, FittedMean fit) {
    if (curves.isEmpty()) {
      return Optional.empty();
    }
    Teller teller = Teller.of(studies, fit);
    return Optional.of(
        curves.stream()
            .map(
                curve ->
                    new RegressionResult.Curve(
                        curve.column(),
                        curve.points().stream().map(point -> predicted(teller, point)).toList()))
            .toList());
  }

  private static RegressionResult.Prediction predicted(Teller teller, Map<String, RowValue> cells) {
    Predicted predicted = teller.fit().at().apply(teller.studies().design().values(cells));
    BackTransform back = teller.back();
    double estimate = predicted.mean().estimate();
    Interval limits = predicted.mean().interval();
    Optional<Result.Estimate> average = average(teller, estimate, limits);
    return new RegressionResult.Prediction(
        teller.values().told(cells),
        estimate,
        predicted.mean().standardError(),
        limits.lower(),
        limits.upper(),
        limit(predicted.prediction(), Interval::lower),
        limit(predicted.prediction(), Interval::upper),
        teller.values().outside(cells),
        new RegressionResult.Shown(
            back.apply(estimate),
            back.apply(limits.lower()),
            back.apply(limits.upper()),
            limit(predicted.prediction(), one -> back.apply(one.lower())),
            limit(predicted.prediction(), one -> back.apply(one.upper())),
            part(average, Result.Estimate::estimate),
            part(average, Result.Estimate::lower),
            part(average, Result.Estimate::upper)),
        teller.studies().asked().places().at(predicted.distribution(), back));
  }

  private static Optional<Result.Estimate> average(
      Teller teller, double estimate, Interval limits) {
    PoolingPlan plan = teller.studies().synthesis().plan();
    return MeanOfTrueValues.of(plan.measure(), plan.scale())
        .map(mean -> mean.of(estimate, limits.lower(), limits.upper(), teller.fit().tauSquared()));
  }

  private static OptionalDouble part(
      Optional<Result.Estimate> average, ToDoubleFunction<Result.Estimate> which) {
    return average.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(which.applyAsDouble(average.get()));
  }

  private static OptionalDouble limit(
      Optional<Interval> interval, ToDoubleFunction<Interval> which) {
    return interval.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(which.applyAsDouble(interval.get()));
  }
}
