package gapwise.synthesis.regression;

import gapwise.synthesis.pooling.PoolingSettings;

/**
 * How a regression is made.
 *
 * @param pooling estimator of the variance between studies, its interval, level
 * @param test of coefficients; for a common effect it must be normal
 */
public record RegressionSettings(PoolingSettings pooling, RegressionTest test) {
  public RegressionSettings {
    if (pooling.estimator().isEmpty() && test != RegressionTest.NORMAL) {
      throw new IllegalArgumentException("a common effect has no residual scale to test by");
    }
  }
}
