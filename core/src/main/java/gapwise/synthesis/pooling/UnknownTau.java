package gapwise.synthesis.pooling;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.NormalLikelihood;
import gapwise.synthesis.heterogeneity.UnknownSpread;
import java.util.List;
import java.util.Optional;

/**
 * The true effect of a further study where tau is not taken as known: {@link UnknownSpread} by the
 * restricted likelihood, whatever the estimator, and at each tau normal about the weighted mean
 * with the variances of the mean and between studies added. The same as the predictive distribution
 * of the posterior with every mean and every tau alike beforehand (Higgins, Thompson and
 * Spiegelhalter, J R Stat Soc A 2009;172:137).
 */
public final class UnknownTau {
  /** The likelihood falls like tau to the power of -(k - p), which must be more than 1. */
  static final int FEWEST_RESIDUAL = 2;

  private final EffectSample sample;
  private final GroupMeans model;
  private final UnknownSpread spread;

  private UnknownTau(EffectSample sample, GroupMeans model, UnknownSpread spread) {
    this.sample = sample;
    this.model = model;
    this.spread = spread;
  }

  /** Whether studies are enough for the likelihood of tau to have an integral. */
  static boolean isTold(EffectSample sample, GroupMeans model) {
    return sample.size() - model.parameters() >= FEWEST_RESIDUAL;
  }

  /**
   * Of studies that share tau; empty if they are too few, or too many to be integrated over.
   *
   * @param sample without a variance of 0, within arithmetic
   * @param tauSquared about where its likelihood is highest
   */
  static Optional<UnknownTau> of(EffectSample sample, GroupMeans model, double tauSquared) {
    if (!isTold(sample, model) || sample.size() > UnknownSpread.MOST_ROWS) {
      return Optional.empty();
    }
    NormalLikelihood likelihood = new NormalLikelihood(sample, model, true);
    double precision = sample.sum(i -> 1 / sample.variance(i)) / sample.size();
    return UnknownSpread.ofOne(
            tau -> likelihood.at(tau * tau), 1 / Math.sqrt(precision), Math.sqrt(tauSquared))
        .map(spread -> new UnknownTau(sample, model, spread));
  }

  /** Of studies with one mean; empty as {@link #of}. */
  public static Optional<UnknownSpread.Further> ofOneMean(EffectSample sample, double tauSquared) {
    return of(sample, GroupMeans.one(sample), tauSquared).map(found -> found.further(0));
  }

  /** A further study of a group. */
  UnknownSpread.Further further(int group) {
    List<UnknownSpread.Point> points = spread.points();
    double[] means = new double[points.size()];
    double[] deviations = new double[points.size()];
    for (int p = 0; p < means.length; p++) {
      double tau = points.get(p).first();
      GroupMeans.GroupFit fit = model.fit(sample, sample.weights(tau * tau));
      means[p] = fit.mean(group);
      deviations[p] = Math.hypot(1 / Math.sqrt(fit.weightSum(group)), tau);
    }
    return spread.further(means, deviations);
  }
}
