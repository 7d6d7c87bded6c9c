package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class PaceTest {
  private static final long SECOND = 1_000_000_000L;
  private final Pace pace = new Pace(Duration.ofSeconds(10), 1_000, Duration.ofSeconds(100));

  @Test
  void nothingIsAskedAtFirst() {
    assertFalse(pace.tooSlow(10 * SECOND, 0));
  }

  @Test
  void aByteNowAndThenIsTooSlowHoweverSteady() {
    assertTrue(pace.tooSlow(11 * SECOND, 3));
    assertFalse(pace.tooSlow(11 * SECOND, 11_000));
    assertTrue(pace.tooSlow(11 * SECOND, 10_999));
  }

  @Test
  void aFastLineMustBeDoneInTheEnd() {
    assertTrue(pace.tooSlow(101 * SECOND, Long.MAX_VALUE));
  }
}
