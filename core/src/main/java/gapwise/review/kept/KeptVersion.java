package gapwise.review.kept;

import java.time.Instant;
import java.util.Objects;

/**
 * A kept question in one of its versions; each holds the answer that somebody took.
 *
 * @param question the question with its answer
 * @param version 1 for the first
 * @param when when it was taken
 * @param who who took it
 * @param why the reason given
 */
public record KeptVersion(
    KeptQuestion question, int version, Instant when, String who, String why) {
  public KeptVersion {
    Objects.requireNonNull(question, "question");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(why, "why");
  }
}
