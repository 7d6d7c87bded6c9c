package gapwise.analysis.curves;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.TaskResult;
import java.util.List;
import java.util.Optional;

/**
 * What the tasks {@code reconstruct-curve} and {@code survival} make.
 *
 * @param curves of each group, of each study where rows tell studies apart
 * @param comparison of two groups, if asked for
 * @param pooledCurves if asked for
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record CurvesResult(
    List<CurveResult> curves,
    Optional<ComparisonResult> comparison,
    Optional<List<PooledCurveResult>> pooledCurves)
    implements TaskResult {
  public CurvesResult {
    curves = List.copyOf(curves);
  }
}
