package gapwise.synthesis.pooling;

import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.Optional;

/**
 * How effects are pooled.
 *
 * @param estimator of the variance between studies; empty for a common effect
 * @param interval for the mean
 * @param prediction for a further study; used with random effects only
 * @param tauSquaredInterval used with random effects only
 * @param level of all intervals, above 0 and below 1
 */
public record PoolingSettings(
    Optional<TauSquaredEstimator> estimator,
    MeanInterval interval,
    Prediction prediction,
    TauSquaredInterval tauSquaredInterval,
    double level) {
  public PoolingSettings {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("level must be between 0 and 1, was " + level);
    }
  }

  /** The same with a common effect and normal limits. */
  public PoolingSettings withCommonEffect() {
    return new PoolingSettings(
        Optional.empty(), MeanIntervals.normal(), prediction, tauSquaredInterval, level);
  }
}
