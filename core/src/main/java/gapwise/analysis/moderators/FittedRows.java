package gapwise.analysis.moderators;

import gapwise.analysis.pooling.PooledResult;
import java.util.Optional;

/**
 * What a regression makes of the rows.
 *
 * @param rows with their weights, and what is left of heterogeneity
 * @param regression empty where it cannot be fitted
 */
public record FittedRows(PooledResult rows, Optional<RegressionResult> regression) {}
