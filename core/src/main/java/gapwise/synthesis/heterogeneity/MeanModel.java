package gapwise.synthesis.heterogeneity;

import java.util.OptionalDouble;

/**
 * What the means of the studies may depend on: nothing, or the group a study belongs to. Estimators
 * of tau squared see a model only through its weighted least-squares fit, in the notation of
 * Raudenbush (1994): P = W - W X (X'WX)^-1 X'W for the weights W and the design X.
 */
public interface MeanModel {
  /** Number of free means, p. */
  int parameters();

  /**
   * The weighted least-squares fit.
   *
   * @param weights above 0, one a study
   */
  Fit fit(EffectSample sample, double[] weights);

  /** Q(t): squared residuals of the fit with weights 1/(v + t), weighted so. */
  default double squares(EffectSample sample, double tauSquared) {
    double[] weights = sample.weights(tauSquared);
    Fit fit = fit(sample, weights);
    return sample.sum(i -> weights[i] * fit.residual(i) * fit.residual(i));
  }

  /**
   * Twice the slope of the log likelihood of tau squared at t: sum of w^2 r^2 less tr P
   * (restricted) or the sum of w (full).
   */
  default double likelihoodSlope(EffectSample sample, double tauSquared, boolean restricted) {
    double[] weights = sample.weights(tauSquared);
    Fit fit = fit(sample, weights);
    return sample.sum(
        i -> {
          double weightedResidual = weights[i] * fit.residual(i);
          return weightedResidual * weightedResidual
              - (restricted ? fit.projection(i) : weights[i]);
        });
  }

  /**
   * The tau squared with the highest likelihood where the model has a short proof that it is the
   * only top; empty if it has none, which leaves the search to a scan.
   */
  default OptionalDouble onlyTop(EffectSample sample, boolean restricted) {
    return OptionalDouble.empty();
  }

  /** A weighted least-squares fit. */
  interface Fit {
    /** Effect less fitted mean of a study. */
    double residual(int study);

    /** The study's entry on the diagonal of P. */
    double projection(int study);

    /** log det(X'WX). */
    double logDeterminant();
  }
}
