package gapwise.analysis.clusters;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.OptionalDouble;

/**
 * Variances between clusters and within them, as far as the data tell them apart. Part of a {@link
 * Result}.
 *
 * @param betweenVariance of the means of clusters
 * @param withinVariance of the true values of rows of one cluster
 * @param iSquaredBetweenPercent share of the former in a typical row's whole variance
 * @param iSquaredWithinPercent share of the latter
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ThreeLevelResult(
    OptionalDouble betweenVariance,
    OptionalDouble withinVariance,
    OptionalDouble iSquaredBetweenPercent,
    OptionalDouble iSquaredWithinPercent) {}
