package gapwise.server.home;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks now and then whether the log of changes has grown, for another process on the same home
 * tells nobody that it wrote. What the own process writes is told at once and costs nothing here.
 */
final class ChangeWatch implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ChangeWatch.class);

  /**
   * A person who has imported by command looks at the page some seconds later. One look is a
   * question for the largest number of the log: measured, a tenth of a millisecond.
   */
  private static final long PAUSE_MILLISECONDS = 250;

  private final LongSupplier lastChange;
  private final LongSupplier reached;
  private final Runnable follow;
  private final ScheduledExecutorService looks =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "changes of others");
            thread.setDaemon(true);
            return thread;
          });
  private long seen;
  private boolean failed;

  private ChangeWatch(LongSupplier lastChange, LongSupplier reached, Runnable follow) {
    this.lastChange = lastChange;
    this.reached = reached;
    this.follow = follow;
    this.seen = reached.getAsLong();
  }

  /**
   * Begins to look.
   *
   * @param lastChange number of the last change of the log
   * @param reached number of the last change that is shown
   * @param follow takes in what has been written, by whomever; what it cannot take in it tries
   *     again by itself
   */
  static ChangeWatch start(LongSupplier lastChange, LongSupplier reached, Runnable follow) {
    ChangeWatch watch = new ChangeWatch(lastChange, reached, follow);
    watch.looks.scheduleWithFixedDelay(
        watch::look, PAUSE_MILLISECONDS, PAUSE_MILLISECONDS, TimeUnit.MILLISECONDS);
    return watch;
  }

  private void look() {
    try {
      long last = lastChange.getAsLong();
      if (last != seen && last > reached.getAsLong()) {
        follow.run();
      }
      seen = last;
      failed = false;
    } catch (RuntimeException unread) {
      // An exception would end all looks; one line tells it, until a look succeeds again.
      if (!failed) {
        LOG.warn("the log of changes cannot be looked at: {}", unread.getMessage());
      }
      failed = true;
    }
  }

  /** Looks no more, and waits for a look that is under way. */
  @Override
  public void close() {
    looks.shutdown();
    try {
      if (!looks.awaitTermination(30, TimeUnit.SECONDS)) {
        LOG.warn("the changes of others were still being taken in when the home was closed");
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
