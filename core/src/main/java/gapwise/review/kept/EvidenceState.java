package gapwise.review.kept;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * Which state of which evidence base an answer is from, worked out by which program. The moment of
 * the change tells two bases with as many changes apart.
 *
 * @param change number of its last change
 * @param when when that was made; empty for a base without any
 * @param program version of the program
 */
public record EvidenceState(long change, Optional<Instant> when, String program) {
  public EvidenceState {
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(program, "program");
    if (change < 0) {
      throw new IllegalArgumentException("change must be 0 or more, was " + change);
    }
  }
}
