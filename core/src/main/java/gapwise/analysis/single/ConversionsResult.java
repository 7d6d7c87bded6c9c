package gapwise.analysis.single;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.TaskResult;
import java.util.List;
import java.util.OptionalDouble;

/** What the task {@code convert} makes: one entry a row that has what is needed. */
public record ConversionsResult(List<Conversion> conversions) implements TaskResult {
  public ConversionsResult {
    conversions = List.copyOf(conversions);
  }

  /**
   * Means and standard deviations of one row.
   *
   * @param reported beside the median: {@code range}, {@code quartiles}, {@code both}
   */
  public record Conversion(String label, String reported, List<Converted> values) {}

  /** What one method makes of a row. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Converted(String method, OptionalDouble mean, OptionalDouble sd) {}
}
