package gapwise.store;

import java.time.Instant;
import java.util.Objects;

/**
 * Something that a person is at work on and has not handed in.
 *
 * @param key its name among those of its kind
 * @param version 1 when it was begun, one more each time it was kept
 * @param when when it was last kept
 * @param who who last kept it
 * @param json its content
 */
public record WorkingCopy(String key, int version, Instant when, String who, String json) {
  public WorkingCopy {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(json, "json");
    if (version < 1) {
      throw new IllegalArgumentException("version counts from 1, was " + version);
    }
  }
}
