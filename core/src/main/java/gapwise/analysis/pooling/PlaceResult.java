package gapwise.analysis.pooling;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Where a value stands among studies. Part of a {@link Result}.
 *
 * @param value as the plan gives it, in the numbers people read
 * @param newStudiesBelow share, from 0 to 1, of further studies whose true result is expected below
 *     it; empty where the studies give no distribution
 * @param studiesBelow pooled studies whose own result is below it; empty in a regression
 * @param studies pooled studies; empty in a regression
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record PlaceResult(
    double value, OptionalDouble newStudiesBelow, OptionalInt studiesBelow, OptionalInt studies) {}
