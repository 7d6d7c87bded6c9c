package gapwise.answer;

import gapwise.figure.value.Estimate;
import gapwise.selection.SelectedRow;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A row behind a number.
 *
 * @param row the row
 * @param weightPercent its part of what was pooled, 0 to 100; empty where nothing was pooled
 * @param value what it shows; empty where it has no number of its own
 */
public record WeighedRow(SelectedRow row, OptionalDouble weightPercent, Optional<Estimate> value) {
  public WeighedRow {
    Objects.requireNonNull(row, "row");
    Objects.requireNonNull(weightPercent, "weightPercent");
    Objects.requireNonNull(value, "value");
  }
}
