package gapwise.claim;

import java.util.Objects;
import java.util.Optional;

/**
 * What speaks of the two methods of a claim beside studies that hold both; each empty where it
 * gives no numbers.
 *
 * @param indirect a comparison through other methods, by a network of studies
 * @param adjusted separate series with allowance for what differs, the fullest there is
 * @param byPatients separate series at one missing length, by patients described one by one and
 *     summaries of the other series in one model
 */
public record Through(Optional<Part> indirect, Optional<Part> adjusted, Optional<Part> byPatients) {
  /** Nothing does. */
  static final Through NOTHING = new Through(Optional.empty(), Optional.empty(), Optional.empty());

  public Through {
    Objects.requireNonNull(indirect, "indirect");
    Objects.requireNonNull(adjusted, "adjusted");
    Objects.requireNonNull(byPatients, "byPatients");
  }

  /** Whether anything gives numbers. */
  public boolean speaks() {
    return indirect.isPresent() || adjusted.isPresent() || byPatients.isPresent();
  }
}
