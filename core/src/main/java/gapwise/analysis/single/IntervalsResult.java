package gapwise.analysis.single;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.TaskResult;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the task {@code interval} makes.
 *
 * @param intervals of each row that has what is needed
 * @param pooled of all counts together, if asked for
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record IntervalsResult(List<Intervals> intervals, Optional<Intervals> pooled)
    implements TaskResult {
  public IntervalsResult {
    intervals = List.copyOf(intervals);
  }

  /** Intervals of one row, or of all counts together. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Intervals(
      Optional<String> label,
      double events,
      OptionalDouble total,
      OptionalDouble personTime,
      double estimate,
      List<Limits> methods) {}

  /** The limits of one method. */
  public record Limits(String method, double lower, double upper) {}
}
