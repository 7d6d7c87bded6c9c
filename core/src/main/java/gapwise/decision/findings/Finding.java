package gapwise.decision.findings;

import gapwise.decision.certainty.Rating;
import gapwise.decision.option.Column;
import gapwise.decision.situation.Fit;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.Objects;
import java.util.Optional;

/**
 * What is known of one outcome after one method, or between two of them within studies.
 *
 * @param kind which of the two
 * @param column the outcome
 * @param about the method, or the first less the second
 * @param value the number; empty where there is none
 * @param words the number with its unit and interval, or why there is none
 * @param counted events and people, or patients; empty where nothing is known
 * @param series how many series or studies; empty where there are none
 * @param newCentre where a new centre may lie; empty where it cannot be told
 * @param fit how the groups fit the situation; empty where nothing is known or was asked
 * @param rating how certain the number is, and what lowers it; empty where nothing is known
 * @param settled who settled the certainty, when and why; empty where it stands as proposed
 */
public record Finding(
    Kind kind,
    Column column,
    String about,
    Optional<Estimate> value,
    String words,
    String counted,
    String series,
    Optional<Limits> newCentre,
    Optional<Fit> fit,
    Optional<Rating> rating,
    String settled) {
  public Finding {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(about, "about");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(counted, "counted");
    Objects.requireNonNull(series, "series");
    Objects.requireNonNull(newCentre, "newCentre");
    Objects.requireNonNull(fit, "fit");
    Objects.requireNonNull(rating, "rating");
    Objects.requireNonNull(settled, "settled");
  }

  /** What a number is of. */
  public enum Kind {
    /** One method in separate groups of patients, which is no comparison. */
    ONE_METHOD("one method"),
    /** Two methods within the same studies. */
    WITHIN_STUDIES("compared within studies");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** For people. */
    public String label() {
      return label;
    }
  }
}
