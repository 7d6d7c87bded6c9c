package gapwise.server.admission;

import java.time.Duration;
import java.util.Objects;

/**
 * How fast bytes must go over a line, on average since the first. A limit of silence alone is not
 * enough: a byte every few seconds would hold a connection for ever.
 *
 * @param grace time in which nothing is asked of the line
 * @param leastBytesPerSecond average that is asked after it
 * @param most time after which even a fast line must be done
 */
public record Pace(Duration grace, long leastBytesPerSecond, Duration most) {
  private static final double NANOS_PER_SECOND = 1e9;

  public Pace {
    Objects.requireNonNull(grace, "grace");
    Objects.requireNonNull(most, "most");
    if (leastBytesPerSecond < 0) {
      throw new IllegalArgumentException("rate below 0: " + leastBytesPerSecond);
    }
  }

  /**
   * Whether a line that brought so many bytes in so much time is too slow.
   *
   * @param nanos time since the first byte
   */
  boolean tooSlow(long nanos, long bytes) {
    if (nanos <= grace.toNanos()) {
      return false;
    }
    return nanos > most.toNanos() || bytes < leastBytesPerSecond * (nanos / NANOS_PER_SECOND);
  }
}
