package gapwise.analysis.clusters;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.OptionalDouble;

/**
 * Variances between clusters and within them, as far as the data tell them apart. Part of a {@link
 * Result}.
 *
 * @param betweenVariance of the means of clusters
 * @param withinVariance of the true values of rows of one cluster
 * @param betweenVarianceLower lower profile likelihood limit at the plan's level; limits are empty
 *     with very many rows
 * @param iSquaredBetweenPercent share of the former in a typical row's whole variance
 * @param iSquaredBetweenPercentLower lower limit, with the share itself held
 * @param iSquaredWithinPercent share of the latter
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ThreeLevelResult(
    OptionalDouble betweenVariance,
    OptionalDouble betweenVarianceLower,
    OptionalDouble betweenVarianceUpper,
    OptionalDouble withinVariance,
    OptionalDouble withinVarianceLower,
    OptionalDouble withinVarianceUpper,
    OptionalDouble iSquaredBetweenPercent,
    OptionalDouble iSquaredBetweenPercentLower,
    OptionalDouble iSquaredBetweenPercentUpper,
    OptionalDouble iSquaredWithinPercent,
    OptionalDouble iSquaredWithinPercentLower,
    OptionalDouble iSquaredWithinPercentUpper) {}
