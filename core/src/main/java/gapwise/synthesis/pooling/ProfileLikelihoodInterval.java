package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.numeric.BracketedRoot;
import gapwise.numeric.ReferenceDistribution;
import gapwise.numeric.ScannedMaximum;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.NormalLikelihood;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;

/**
 * Means whose likelihood, with tau squared at its best for each, is near enough to the top: Hardy
 * and Thompson, Stat Med 1996;15:619. Mean, limits and test go with maximum likelihood whatever
 * estimator of tau squared is named: limits about another mean need not hold it. The test is the
 * signed root of the likelihood ratio against 0.
 */
final class ProfileLikelihoodInterval implements MeanInterval {
  /** Means nearer than this share of a standard error are one. */
  private static final double ROUNDING = 1e-6;

  @Override
  public String name() {
    return "profile-likelihood";
  }

  @Override
  public String label() {
    return "profile-likelihood interval";
  }

  @Override
  public boolean ignoresTauSquared() {
    return true;
  }

  @Override
  public double weightingTauSquared(EffectSample sample, double estimated) {
    return new NormalLikelihood(sample, GroupMeans.one(sample), false).maximum().value();
  }

  @Override
  public Optional<Problem> caution(WeightedMean mean, double level) {
    WeightedMean own = WeightedMean.of(mean.sample(), weightingTauSquared(mean.sample(), 0));
    double apart = Math.abs(own.estimate() - mean.estimate());
    return apart > ROUNDING * own.standardError()
        ? Optional.of(
            new Problem("", "estimate-by-maximum-likelihood", say("analysis.profile-has-own-mean")))
        : Optional.empty();
  }

  @Override
  public PooledMean around(WeightedMean mean, double level) {
    EffectSample sample = mean.sample();
    double tauSquared = weightingTauSquared(sample, 0);
    GroupMeans.GroupFit fit = GroupMeans.one(sample).fit(sample, sample.weights(tauSquared));
    double top = logLikelihood(sample, fit.mean(0), tauSquared);
    double z = ReferenceDistribution.normal().multiplier(level);
    DoubleUnaryOperator short0 = value -> profile(sample, value) - top + z * z / 2;
    double step = 2 * z / Math.sqrt(fit.weightSum(0));
    double lower = limit(short0, fit.mean(0), -step);
    double upper = limit(short0, fit.mean(0), step);
    double statistic =
        Math.signum(fit.mean(0)) * Math.sqrt(Math.max(0, 2 * (top - profile(sample, 0))));
    return new PooledMean(
        fit.mean(0),
        1 / Math.sqrt(fit.weightSum(0)),
        new Interval(lower, upper),
        OptionalDouble.of(statistic),
        OptionalInt.empty(),
        OptionalDouble.of(ReferenceDistribution.normal().twoSidedP(statistic)));
  }

  /** Steps away, twice as far each time, until the likelihood has dropped; then narrows down. */
  private static double limit(DoubleUnaryOperator drop, double top, double step) {
    double reach = step;
    while (drop.applyAsDouble(top + reach) > 0) {
      reach *= 2;
    }
    return BracketedRoot.find(drop, Math.min(top, top + reach), Math.max(top, top + reach)).value();
  }

  /** The highest log likelihood with the mean fixed. */
  private static double profile(EffectSample sample, double mean) {
    double squares = sample.sum(i -> square(sample.effect(i) - mean));
    if (squares == 0) {
      return logLikelihood(sample, mean, 0);
    }
    double best =
        ScannedMaximum.find(
                t -> logLikelihood(sample, mean, t),
                t -> slope(sample, mean, t),
                NormalLikelihood.upper(squares, sample.size(), sample),
                sample.variance(sample.mostExact()) / 100)
            .place();
    return logLikelihood(sample, mean, best);
  }

  private static double slope(EffectSample sample, double mean, double tauSquared) {
    double slope = 0;
    for (int i = 0; i < sample.size(); i++) {
      double weight = 1 / (sample.variance(i) + tauSquared);
      double pull = (sample.effect(i) - mean) * weight;
      slope += pull * pull - weight;
    }
    return slope;
  }

  private static double logLikelihood(EffectSample sample, double mean, double tauSquared) {
    return -sample.sum(
            i -> {
              double total = sample.variance(i) + tauSquared;
              return Math.log(2 * Math.PI * total) + square(sample.effect(i) - mean) / total;
            })
        / 2;
  }

  private static double square(double x) {
    return x * x;
  }
}
