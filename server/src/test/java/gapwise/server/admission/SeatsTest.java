package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class SeatsTest {
  private static final Duration LONG = Duration.ofHours(1);
  private static final Duration SHORT = Duration.ofMillis(20);

  @Test
  void whoLeavesTheQueueIsNotWaitedFor() {
    Seats seats = new Seats(1, 5);
    assertEquals(Seats.Outcome.SEATED, seats.take(LONG, () -> false));
    assertEquals(Seats.Outcome.LEFT, seats.take(LONG, () -> true));
  }

  @Test
  void aFullQueueTurnsAwayAtOnceAndAShortPatienceSoon() {
    Seats none = new Seats(1, 0);
    assertEquals(Seats.Outcome.SEATED, none.take(LONG, () -> false));
    assertEquals(Seats.Outcome.BUSY, none.take(LONG, () -> false));
    Seats seats = new Seats(1, 1);
    assertEquals(Seats.Outcome.SEATED, seats.take(LONG, () -> false));
    assertEquals(Seats.Outcome.BUSY, seats.take(SHORT, () -> false));
  }

  @Test
  void aSeatThatIsLeftIsTakenAgain() {
    Seats seats = new Seats(1, 1);
    for (int i = 0; i < 3; i++) {
      assertEquals(Seats.Outcome.SEATED, seats.take(SHORT, () -> false));
      seats.leave();
    }
  }
}
