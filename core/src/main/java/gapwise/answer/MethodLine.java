package gapwise.answer;

import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of one method, or of one word of a detail, as a line beside others.
 *
 * @param of what was done
 * @param counted events of all counted, or how many were counted; empty where nothing is known
 * @param series how many series, and of how many studies; empty where there are none
 * @param lengths how the missing bone of the series fits the question; empty where there are none
 * @param finding what came of it
 * @param told the same in sentences; empty where there is nothing to tell
 * @param rows the rows that it speaks of, each with its part
 */
public record MethodLine(
    GroupName of,
    String counted,
    String series,
    String lengths,
    Finding finding,
    Optional<Told> told,
    List<Weighed> rows) {
  public MethodLine {
    Objects.requireNonNull(of, "of");
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(told, "told");
    rows = List.copyOf(rows);
  }

  /** What came of one method. */
  public sealed interface Finding {}

  /**
   * Several series pooled.
   *
   * @param value the average over centres with its interval
   * @param newCentre where the true value of a new centre may lie; empty where it cannot be told
   */
  public record Average(Estimate value, Optional<Limits> newCentre) implements Finding {}

  /** One series, whose own value is no average. */
  public record OneSeries(Estimate value) implements Finding {}

  /** Series without an average. */
  public record NoAverage() implements Finding {}

  /** Groups report the outcome, and none can be used for this question. */
  public record NothingUsable() implements Finding {}

  /** No group of the evidence base fits. */
  public record NoStudy() implements Finding {}

  /**
   * A row behind it.
   *
   * @param row the row
   * @param weightPercent its part of what was pooled, 0 to 100; empty where nothing was pooled
   * @param value what it shows; empty where it has no number of its own
   */
  public record Weighed(SelectedRow row, OptionalDouble weightPercent, Optional<Estimate> value) {
    public Weighed {
      Objects.requireNonNull(row, "row");
      Objects.requireNonNull(weightPercent, "weightPercent");
      Objects.requireNonNull(value, "value");
    }
  }
}
