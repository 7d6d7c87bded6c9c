package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.ISquared;
import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Pooled values in the form of a result. */
public final class Summaries {
  private Summaries() {}

  public static Optional<Result.Summary> summary(Pooled pooled, BackTransform back) {
    return pooled.mean().map(mean -> summary(mean, pooled, back));
  }

  private static Result.Summary summary(PooledMean mean, Pooled pooled, BackTransform back) {
    Optional<Interval> prediction = pooled.prediction();
    return new Result.Summary(
        mean.estimate(),
        mean.standardError(),
        mean.interval().lower(),
        mean.interval().upper(),
        mean.statistic(),
        mean.degreesOfFreedom(),
        mean.pValue(),
        limit(prediction, Interval::lower),
        limit(prediction, Interval::upper),
        pooled
            .association()
            .map(
                test ->
                    new Result.Association(
                        test.chiSquared(), test.degreesOfFreedom(), test.pValue())),
        new Result.Shown(
            back.apply(mean.estimate()),
            back.apply(mean.interval().lower()),
            back.apply(mean.interval().upper()),
            limit(prediction, limits -> back.apply(limits.lower())),
            limit(prediction, limits -> back.apply(limits.upper())),
            back.n(),
            also(mean, back),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty()));
  }

  /**
   * Why limits that differ are shown as one value: they lie beyond what the way back reaches, as
   * that of a double arcsine ends at 0 and 1. Empty if they are shown apart, or are one already.
   */
  public static Optional<Problem> withoutWidth(Optional<Result.Summary> summary) {
    return summary
        .filter(one -> one.lower() < one.upper() && one.shown().lower() == one.shown().upper())
        .map(
            one ->
                new Problem(
                    "",
                    "zero-width-interval",
                    say(
                        "analysis.shown-without-width",
                        Map.of("value", String.valueOf(one.shown().lower())))));
  }

  private static Optional<List<Result.WithN>> also(PooledMean mean, BackTransform back) {
    if (back.also().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        back.also().stream()
            .map(
                other ->
                    new Result.WithN(
                        other.n().orElseThrow(),
                        other.apply(mean.estimate()),
                        other.apply(mean.interval().lower()),
                        other.apply(mean.interval().upper())))
            .toList());
  }

  public static Result.Heterogeneity heterogeneity(Heterogeneity h) {
    return new Result.Heterogeneity(
        h.q(),
        h.degreesOfFreedom(),
        h.pValue(),
        h.tauSquared(),
        map(h.tauSquared(), Math::sqrt),
        limit(h.tauSquaredInterval(), Interval::lower),
        limit(h.tauSquaredInterval(), Interval::upper),
        new ISquared(
            map(h.iSquared(), share -> 100 * share),
            limit(h.iSquaredInterval(), limits -> 100 * limits.lower()),
            limit(h.iSquaredInterval(), limits -> 100 * limits.upper()),
            map(h.iSquaredFromQ(), share -> 100 * share)),
        h.hSquared(),
        h.hSquaredFromQ(),
        h.intraclassCorrelation());
  }

  public static Optional<Result.Fit> fit(Pooled pooled) {
    return pooled
        .likelihood()
        .map(top -> new Result.Fit(top.logLikelihood(), top.restricted(), top.converged()));
  }

  private static OptionalDouble limit(
      Optional<Interval> interval, ToDoubleFunction<Interval> which) {
    return interval.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(which.applyAsDouble(interval.get()));
  }

  private static OptionalDouble map(OptionalDouble value, Function<Double, Double> function) {
    return value.isEmpty() ? value : OptionalDouble.of(function.apply(value.getAsDouble()));
  }
}
