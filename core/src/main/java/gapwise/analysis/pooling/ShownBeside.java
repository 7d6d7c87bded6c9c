package gapwise.analysis.pooling;

import gapwise.analysis.result.Result;
import gapwise.effect.ArmCounts;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * What stands beside the carried-back values of a summary: the mean over studies beside their
 * median, the limit when the exact likelihood has no highest point, and, beside a double arcsine,
 * the answer of the exact likelihood for the same counts.
 */
public final class ShownBeside {
  private static final int USUAL_POINTS = 25;

  private final PoolingPlan plan;

  public ShownBeside(PoolingPlan plan) {
    this.plan = plan;
  }

  /**
   * A summary with what belongs to it.
   *
   * @param data what the pooled studies report
   */
  public Optional<Result.Summary> with(
      Optional<Result.Summary> summary, Pooled pooled, List<? extends StudyData> data) {
    Optional<Result.Estimate> exact = summary.isPresent() ? besideArcsine(data) : Optional.empty();
    return summary.map(one -> with(one, average(one, pooled), exact));
  }

  /**
   * A summary of one study alone tells people what that study found, nothing added, with its exact
   * interval, where the measure has one; on the analysis scale it stays as it is.
   */
  public <D extends StudyData> Optional<Result.Summary> alone(
      Optional<Result.Summary> summary, Measure<D> measure, List<D> data) {
    Optional<Measure.ShownStudy> own =
        data.size() == 1 ? measure.shownStudy(data.get(0), plan.level()) : Optional.empty();
    return own.isEmpty() ? summary : summary.map(one -> with(one, shown(one.shown(), own.get())));
  }

  private static Result.Shown shown(Result.Shown shown, Measure.ShownStudy own) {
    Interval limits = own.interval();
    OptionalDouble none = OptionalDouble.empty();
    boolean average = shown.average().isPresent();
    return new Result.Shown(
        own.estimate(),
        limits.lower(),
        limits.upper(),
        shown.predictionLower(),
        shown.predictionUpper(),
        none,
        Optional.empty(),
        average ? OptionalDouble.of(own.estimate()) : none,
        average ? OptionalDouble.of(limits.lower()) : none,
        average ? OptionalDouble.of(limits.upper()) : none,
        shown.exactLikelihood());
  }

  private static Result.Summary with(
      Result.Summary summary, Optional<Result.Estimate> average, Optional<Result.Estimate> exact) {
    Result.Shown shown = summary.shown();
    return with(
        summary,
        new Result.Shown(
            shown.estimate(),
            shown.lower(),
            shown.upper(),
            shown.predictionLower(),
            shown.predictionUpper(),
            shown.n(),
            shown.also(),
            part(average, Result.Estimate::estimate),
            part(average, Result.Estimate::lower),
            part(average, Result.Estimate::upper),
            exact));
  }

  private static Result.Summary with(Result.Summary summary, Result.Shown shown) {
    return new Result.Summary(
        summary.estimate(),
        summary.standardError(),
        summary.lower(),
        summary.upper(),
        summary.statistic(),
        summary.degreesOfFreedom(),
        summary.pValue(),
        summary.predictionLower(),
        summary.predictionUpper(),
        summary.associationTest(),
        shown);
  }

  private static OptionalDouble part(
      Optional<Result.Estimate> average, ToDoubleFunction<Result.Estimate> which) {
    return average.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(which.applyAsDouble(average.get()));
  }

  private Optional<Result.Estimate> average(Result.Summary summary, Pooled pooled) {
    if (pooled.average().isPresent()) {
      return pooled
          .average()
          .map(
              one ->
                  new Result.Estimate(
                      one.estimate(), one.interval().lower(), one.interval().upper()));
    }
    OptionalDouble tauSquared = pooled.heterogeneity().tauSquared();
    return tauSquared.isEmpty()
        ? Optional.empty()
        : MeanOfTrueValues.of(plan.measure(), plan.scale())
            .map(
                mean ->
                    mean.of(
                        summary.estimate(),
                        summary.lower(),
                        summary.upper(),
                        tauSquared.getAsDouble()));
  }

  private boolean ofSingleGroups() {
    return plan.options().pooling() == MeasureOptions.Pooling.COUNTS
        && (plan.measure().equals("proportion") || plan.measure().equals("incidence-rate"));
  }

  /** Where the pooled value goes when the likelihood has no highest point. */
  public OptionalDouble limit(Pooled pooled) {
    if (!ofSingleGroups() || pooled.mean().isPresent()) {
      return OptionalDouble.empty();
    }
    List<String> codes = pooled.warnings().stream().map(Problem::code).toList();
    if (codes.contains("no-events")) {
      return OptionalDouble.of(0);
    }
    return codes.contains("all-events") ? OptionalDouble.of(1) : OptionalDouble.empty();
  }

  private Optional<Result.Estimate> besideArcsine(List<? extends StudyData> data) {
    if (!plan.scale().equals("double-arcsine")
        || !data.stream().allMatch(ArmCounts.class::isInstance)) {
      return Optional.empty();
    }
    ExactLikelihood exact = new ExactLikelihood(ExactLikelihood.Model.PROPORTION, USUAL_POINTS);
    BackTransform back = BackTransform.of(logit -> 1 / (1 + Math.exp(-logit)));
    Optional<PooledMean> mean = exact.pool(data, LikelihoodLimits.normal(plan.level())).mean();
    return mean.map(
        one ->
            new Result.Estimate(
                back.apply(one.estimate()),
                back.apply(one.interval().lower()),
                back.apply(one.interval().upper())));
  }
}
