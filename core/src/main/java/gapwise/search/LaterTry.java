package gapwise.search;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * Does a thing again by itself after a pause that doubles up to a minute; one try waits at a time.
 * Its owner guards it: every method, and the thing itself, is called under the owner's lock.
 */
final class LaterTry {
  private static final long FIRST_PAUSE_SECONDS = 2;
  private static final long LONGEST_PAUSE_SECONDS = 60;

  private final Object turn;
  private final Runnable what;
  private final ScheduledExecutorService later =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "search index");
            thread.setDaemon(true);
            return thread;
          });
  private long pauseSeconds = FIRST_PAUSE_SECONDS;
  private boolean waiting;

  /**
   * @param turn the owner's lock
   * @param what is done, holding the lock
   */
  LaterTry(Object turn, Runnable what) {
    this.turn = turn;
    this.what = what;
  }

  /** Has it done later, unless a try is waiting already. */
  void schedule() {
    if (!waiting) {
      waiting = true;
      later.schedule(this::now, pauseSeconds, TimeUnit.SECONDS);
      pauseSeconds = Math.min(2 * pauseSeconds, LONGEST_PAUSE_SECONDS);
    }
  }

  private void now() {
    synchronized (turn) {
      waiting = false;
      what.run();
    }
  }

  /** It has succeeded: the next pause is short again. */
  void succeeded() {
    pauseSeconds = FIRST_PAUSE_SECONDS;
  }

  /** Nothing is tried any more. */
  void stop() {
    later.shutdownNow();
  }
}
