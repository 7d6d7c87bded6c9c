package gapwise.decision.certainty;

import java.time.Instant;
import java.util.Objects;

/**
 * A judgement as it is kept.
 *
 * @param judgement what was settled
 * @param who who settled it
 * @param when when
 * @param version its version, 1 for the first
 */
public record Settled(Judgement judgement, String who, Instant when, int version) {
  public Settled {
    Objects.requireNonNull(judgement, "judgement");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
  }
}
