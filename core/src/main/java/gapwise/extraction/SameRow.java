package gapwise.extraction;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.exchange.Template;
import gapwise.screening.Reader;
import java.time.Instant;
import java.util.Objects;

/**
 * What a person said of two rows, one of each extraction: that they tell of the same, or that they
 * do not though they look so.
 *
 * @param study id of the study
 * @param sheet sheet of the template
 * @param first number of the row of the first among those of its sheet
 * @param second the same of the second
 * @param same whether they tell of the same
 */
public record SameRow(
    String study, String sheet, int first, int second, boolean same, Reader who, Instant when) {
  public SameRow {
    Objects.requireNonNull(study, "study");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
    if (!Template.names().contains(sheet) || first < 1 || second < 1) {
      throw new IllegalArgumentException(
          "no two rows of a sheet: " + sheet + " " + first + " " + second);
    }
  }

  /** The key under which it is kept. */
  @JsonIgnore
  public String key() {
    return study + " " + sheet + "." + first + "-" + second;
  }
}
