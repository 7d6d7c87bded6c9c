package gapwise.claim;

import java.util.Objects;
import java.util.Optional;

/**
 * What speaks of the two methods of a claim beside studies that hold both; each empty where it
 * gives no numbers.
 *
 * @param indirect a comparison through other methods, by a network of studies
 * @param adjusted separate series with allowance for what differs, the fullest there is
 */
public record Through(Optional<Part> indirect, Optional<Part> adjusted) {
  /** Nothing does. */
  static final Through NOTHING = new Through(Optional.empty(), Optional.empty());

  public Through {
    Objects.requireNonNull(indirect, "indirect");
    Objects.requireNonNull(adjusted, "adjusted");
  }
}
