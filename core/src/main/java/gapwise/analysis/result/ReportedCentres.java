package gapwise.analysis.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What all rows report as their mean or median, those too that cannot be pooled for want of a
 * spread. A description without an interval.
 *
 * @param method code of the method whose rows these are; empty for all methods together
 * @param series rows with a mean or median
 * @param means of them with a mean
 * @param medians of them with a median alone
 * @param unit of the numbers
 * @param lowest smallest mean or median
 * @param lowerQuartile first quartile of them
 * @param upperQuartile third quartile of them
 * @param highest largest
 * @param weightedByPatients their mean weighted by patients; empty where no row says of how many
 * @param patients of the rows that say of how many
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ReportedCentres(
    Optional<String> method,
    int series,
    int means,
    int medians,
    String unit,
    double lowest,
    double lowerQuartile,
    double upperQuartile,
    double highest,
    OptionalDouble weightedByPatients,
    int patients) {}
