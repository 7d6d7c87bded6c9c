package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class SeatsTest {
  private static final Duration LONG = Duration.ofHours(1);
  private static final Duration SHORT = Duration.ofMillis(20);

  /** Whoever waits stays. */
  private static void stays(Runnable action) {
    // never done
  }

  @Test
  void whoLeavesTheQueueIsNotWaitedFor() {
    Seats seats = new Seats(1, 5);
    assertEquals(Seats.Outcome.SEATED, seats.take(LONG, SeatsTest::stays));
    assertEquals(Seats.Outcome.LEFT, seats.take(LONG, Runnable::run));
    assertFalse(Thread.currentThread().isInterrupted(), "the thread serves others after it");
  }

  @Test
  void whoCameFirstIsSeatedFirst() throws Exception {
    Seats seats = new Seats(1, 5);
    assertEquals(Seats.Outcome.SEATED, seats.take(LONG, SeatsTest::stays));
    List<Integer> order = Collections.synchronizedList(new ArrayList<>());
    List<Thread> waiters = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      int number = i;
      CountDownLatch queued = new CountDownLatch(1);
      Thread waiter =
          new Thread(
              () -> {
                if (seats.take(LONG, action -> queued.countDown()) == Seats.Outcome.SEATED) {
                  order.add(number);
                  seats.leave();
                }
              });
      waiters.add(waiter);
      waiter.start();
      assertTrue(queued.await(30, TimeUnit.SECONDS));
      while (waiter.getState() != Thread.State.TIMED_WAITING) {
        Thread.onSpinWait();
      }
    }
    seats.leave();
    for (Thread waiter : waiters) {
      waiter.join();
    }
    assertEquals(List.of(0, 1, 2, 3), order);
  }

  @Test
  void aFullQueueTurnsAwayAtOnceAndAShortPatienceSoon() {
    Seats none = new Seats(1, 0);
    assertEquals(Seats.Outcome.SEATED, none.take(LONG, SeatsTest::stays));
    assertEquals(Seats.Outcome.BUSY, none.take(LONG, SeatsTest::stays));
    Seats seats = new Seats(1, 1);
    assertEquals(Seats.Outcome.SEATED, seats.take(LONG, SeatsTest::stays));
    assertEquals(Seats.Outcome.BUSY, seats.take(SHORT, SeatsTest::stays));
  }

  @Test
  void aSeatThatIsLeftIsTakenAgain() {
    Seats seats = new Seats(1, 1);
    for (int i = 0; i < 3; i++) {
      assertEquals(Seats.Outcome.SEATED, seats.take(SHORT, SeatsTest::stays));
      seats.leave();
    }
  }
}
