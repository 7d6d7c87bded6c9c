package gapwise.analysis.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.OptionalDouble;

/**
 * The share of the variance that is between studies, 0 to 100; its fields stand among those of
 * {@link Result.Heterogeneity}.
 *
 * @param iSquaredPercent from tau squared
 * @param iSquaredPercentLower the lower limit of tau squared as such a share
 * @param iSquaredPercentUpper the upper limit likewise
 * @param iSquaredPercentFromQ from Q
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ISquared(
    OptionalDouble iSquaredPercent,
    OptionalDouble iSquaredPercentLower,
    OptionalDouble iSquaredPercentUpper,
    OptionalDouble iSquaredPercentFromQ) {}
