package gapwise.analysis.clusters;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.OptionalDouble;

/**
 * Variances between clusters and within them, as far as the data tell them apart. Part of a {@link
 * Result}.
 *
 * @param betweenVariance of the means of clusters
 * @param withinVariance of the true values of rows of one cluster
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ThreeLevelResult(OptionalDouble betweenVariance, OptionalDouble withinVariance) {}
