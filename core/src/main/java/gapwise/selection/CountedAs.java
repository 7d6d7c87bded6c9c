package gapwise.selection;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Coded;
import java.util.Optional;

/**
 * In which form a paper gives what one patient can have several of, such as complications. The two
 * are never pooled together: a mean stands with the spread between patients, a sum of events
 * without it.
 */
public enum CountedAs implements Coded {
  /** A mean for each patient, pooled as a mean. */
  MEANS("means", "means for each patient"),
  /** A sum of events among so many patients, pooled as a rate for each patient. */
  EVENTS("events", "events among patients");

  private final String code;
  private final String label;

  CountedAs(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The form of a value; empty for a value of neither. */
  static Optional<CountedAs> of(ReportedValue value) {
    if (value instanceof ReportedValue.Tally) {
      return Optional.of(EVENTS);
    }
    return value instanceof ReportedValue.Quantity ? Optional.of(MEANS) : Optional.empty();
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String label() {
    return label;
  }
}
