package gapwise.place;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Phase;
import java.util.Objects;

/**
 * A phase that the case lived through, as a person gives it.
 *
 * @param phase the kind of phase
 * @param duration above 0, in the unit given
 */
public record Stay(Phase phase, Duration duration) {
  public Stay {
    Objects.requireNonNull(phase, "phase");
    Objects.requireNonNull(duration, "duration");
    if (!(duration.value() > 0)) {
      throw new IllegalArgumentException("a phase must last, was " + duration.value());
    }
  }

  double months() {
    return duration.months();
  }

  /** Whether the frame of the reconstruction is on; a temporary one before it is counted apart. */
  boolean inFrame() {
    return switch (phase) {
      case LATENCY, DISTRACTION, CONSOLIDATION, IN_FRAME -> true;
      default -> false;
    };
  }
}
