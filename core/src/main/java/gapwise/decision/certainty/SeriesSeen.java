package gapwise.decision.certainty;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What the rules look at of one series behind a number.
 *
 * @param share its part of the information, 0 to 1
 * @param concern how far its conduct raises doubt
 * @param value what it found, on the scale of the number
 * @param people of how many it speaks, 0 where not known
 * @param allHad whether everybody had what is good, or nobody what is bad
 */
public record SeriesSeen(
    double share, Concern concern, OptionalDouble value, int people, boolean allHad) {

  /** Doubt about the conduct of a study. */
  public enum Concern {
    LOW,
    /** Not rated, and too little is said to tell. */
    UNKNOWN,
    SERIOUS,
    CRITICAL
  }

  public SeriesSeen {
    Objects.requireNonNull(concern, "concern");
    Objects.requireNonNull(value, "value");
    if (!(share >= 0 && share <= 1 + 1e-9) || people < 0) {
      throw new IllegalArgumentException("share " + share + ", people " + people);
    }
  }
}
