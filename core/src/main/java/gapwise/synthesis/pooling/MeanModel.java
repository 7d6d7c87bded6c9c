package gapwise.synthesis.pooling;

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
