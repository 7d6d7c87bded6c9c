package gapwise.synthesis.testing;

import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import java.util.Optional;

/** Plain ways of pooling for tests: normal limits of 95 %. */
public final class Pooling {
  private Pooling() {}

  /** One effect common to all studies. */
  public static PoolingSettings commonEffect() {
    return settings(Optional.empty());
  }

  /**
   * Random effects.
   *
   * @param estimator its word in a plan
   */
  public static PoolingSettings randomEffects(String estimator) {
    return settings(Optional.of(TauSquaredEstimators.named(estimator).orElseThrow()));
  }

  private static PoolingSettings settings(Optional<TauSquaredEstimator> estimator) {
    return new PoolingSettings(
        estimator,
        MeanIntervals.normal(),
        new Prediction(Prediction.Reference.NORMAL, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        0.95);
  }
}
