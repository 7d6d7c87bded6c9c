package gapwise.server.admission;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

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
   * @param whenGone takes what is done, by any thread, when nobody waits for the answer any more; a
   *     later action takes the place of an earlier one
   */
  Outcome take(Duration patience, Consumer<Runnable> whenGone) {
    try {
      // With a time, if only of nothing, nobody passes those who wait already.
      if (free.tryAcquire(0, TimeUnit.NANOSECONDS)) {
        return Outcome.SEATED;
      }
      try {
        return waiting.incrementAndGet() > queue ? Outcome.BUSY : queued(patience, whenGone);
      } finally {
        waiting.decrementAndGet();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      return Outcome.BUSY;
    }
  }

  private Outcome queued(Duration patience, Consumer<Runnable> whenGone)
      throws InterruptedException {
    Thread waiter = Thread.currentThread();
    AtomicBoolean left = new AtomicBoolean();
    whenGone.accept(
        () -> {
          left.set(true);
          waiter.interrupt();
        });
    boolean seated = false;
    try {
      seated = free.tryAcquire(patience.toNanos(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException woken) {
      if (!left.get()) {
        throw woken;
      }
    } finally {
      whenGone.accept(() -> {});
    }
    if (!left.get()) {
      return seated ? Outcome.SEATED : Outcome.BUSY;
    }
    Thread.interrupted(); // it may have come after the seat
    if (seated) {
      leave();
    }
    return Outcome.LEFT;
  }

  void leave() {
    free.release();
  }
}
