package gapwise.server.admission;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;

/**
 * Places to compute at, with a short queue before them in the order of coming. Safe for use by many
 * threads.
 */
final class Seats {
  private final Semaphore free;
  private final AtomicInteger waiting = new AtomicInteger();
  private final int queue;

  /**
   * @param seats how many may compute at once
   * @param queue how many may wait
   */
  Seats(int seats, int queue) {
    this.free = new Semaphore(seats, true);
    this.queue = queue;
  }

  /** How the waiting for a seat ended. */
  enum Outcome {
    SEATED,
    BUSY,
    LEFT
  }

  /**
   * Waits for a seat, which must be given back by {@link #leave}.
   *
   * @param gone whether nobody waits for the answer any more
   */
  Outcome take(Duration patience, BooleanSupplier gone) {
    if (free.tryAcquire()) {
      return Outcome.SEATED;
    }
    if (waiting.incrementAndGet() > queue) {
      waiting.decrementAndGet();
      return Outcome.BUSY;
    }
    try {
      return queued(System.nanoTime() + patience.toNanos(), gone);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      return Outcome.BUSY;
    } finally {
      waiting.decrementAndGet();
    }
  }

  private Outcome queued(long end, BooleanSupplier gone) throws InterruptedException {
    while (!gone.getAsBoolean()) {
      long left = end - System.nanoTime();
      if (left <= 0) {
        return Outcome.BUSY;
      }
      if (free.tryAcquire(Math.min(left, Departures.LOOK.toNanos()), TimeUnit.NANOSECONDS)) {
        return Outcome.SEATED;
      }
    }
    return Outcome.LEFT;
  }

  void leave() {
    free.release();
  }
}
