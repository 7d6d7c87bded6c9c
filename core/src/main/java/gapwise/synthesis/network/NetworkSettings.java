package gapwise.synthesis.network;

import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.Optional;

/**
 * How a network is put together.
 *
 * @param estimator of the variance between studies; empty for a common effect
 * @param spread how a further study is told
 * @param interval for the variance between studies
 * @param level of all intervals, above 0 and below 1
 */
public record NetworkSettings(
    Optional<TauSquaredEstimator> estimator,
    NetworkPredictions.Spread spread,
    TauSquaredInterval interval,
    double level) {}
