package gapwise.synthesis.heterogeneity;

import gapwise.effect.Interval;
import gapwise.numeric.BracketedRoot;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/** Intervals for the variance between studies. A limit that no value reaches is 0. */
public enum TauSquaredInterval {
  /**
   * Values at which Q takes the outer points of chi-squared on k - p: Viechtbauer, Stat Med
   * 2007;26:37.
   */
  Q_PROFILE {
    @Override
    public Interval of(EffectSample sample, MeanModel model, double level) {
      GeneralisedQ q = new GeneralisedQ(sample, model);
      ChiSquaredDistribution chi = ChiSquaredDistribution.of(sample.size() - model.parameters());
      double tail = (1 - level) / 2;
      double lower = q.where(chi.inverseSurvivalProbability(tail)).value();
      double upper = q.where(chi.inverseCumulativeProbability(tail)).value();
      return new Interval(Math.min(lower, upper), upper);
    }
  },
  /**
   * Values whose likelihood, with the mean at its best for each, is near enough to the top: Hardy
   * and Thompson, Stat Med 1996;15:619. Always maximum likelihood.
   */
  PROFILE_LIKELIHOOD {
    @Override
    public Interval of(EffectSample sample, MeanModel model, double level) {
      NormalLikelihood likelihood = new NormalLikelihood(sample, model, false);
      double best = likelihood.maximum().value();
      double drop = ChiSquaredDistribution.of(1).inverseSurvivalProbability(1 - level) / 2;
      double floor = likelihood.at(best) - drop;
      double lower =
          likelihood.at(0) >= floor
              ? 0
              : BracketedRoot.findHoweverSmall(t -> likelihood.at(t) - floor, 0, best).value();
      double reach = Math.max(best, sample.largestVariance());
      while (likelihood.at(best + reach) > floor) {
        reach *= 2;
      }
      // Back again, so that the outermost crossing is taken and in digits of its own.
      while (likelihood.at(best + reach / 2) <= floor) {
        reach /= 2;
      }
      double upper =
          BracketedRoot.find(t -> likelihood.at(t) - floor, best + reach / 2, best + reach).value();
      return new Interval(lower, upper);
    }
  };

  /**
   * The interval.
   *
   * @param sample more studies than the model has means, no variance 0
   * @param level above 0 and below 1
   */
  public abstract Interval of(EffectSample sample, MeanModel model, double level);
}
