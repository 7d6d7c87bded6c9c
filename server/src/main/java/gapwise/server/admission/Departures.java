package gapwise.server.admission;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Looks a few times a second whether those who wait for an answer are still there. */
final class Departures implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Departures.class);

  /** Often enough that work nobody wants ends at once for a person, and next to no work itself. */
  static final Duration LOOK = Duration.ofMillis(200);

  private final Set<Watch> watches = ConcurrentHashMap.newKeySet();
  private final CountDownLatch closed = new CountDownLatch(1);

  Departures() {
    Thread looking = new Thread(this::lookOften, "departures");
    looking.setDaemon(true);
    looking.start();
  }

  private void lookOften() {
    try {
      while (!closed.await(LOOK.toMillis(), TimeUnit.MILLISECONDS)) {
        look();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  /** Watches one connection until the watch is closed, which must be before the answer. */
  Watch watch(WatchedEndPoint end) {
    Watch watch = new Watch(end);
    end.watch(true);
    watches.add(watch);
    return watch;
  }

  private void look() {
    for (Watch watch : watches) {
      try {
        watch.look();
      } catch (RuntimeException unreadable) {
        // One connection that cannot be looked at must not end the watch over the others.
        LOG.warn("a connection could not be watched", unreadable);
      }
    }
  }

  @Override
  public void close() {
    closed.countDown();
  }

  /** One connection while its request is computed. */
  final class Watch implements AutoCloseable {
    private final WatchedEndPoint end;
    private boolean gone;
    private Runnable told = () -> {};

    private Watch(WatchedEndPoint end) {
      this.end = end;
    }

    private void look() {
      if (end.peerGone()) {
        leave();
      }
    }

    private synchronized void leave() {
      if (!gone) {
        gone = true;
        told.run();
      }
    }

    /**
     * Says what to do when nobody waits any more, in place of what was said before; done at once
     * where that is so already.
     */
    synchronized void whenGone(Runnable action) {
      told = action;
      if (gone) {
        action.run();
      }
    }

    @Override
    public void close() {
      watches.remove(this);
      end.watch(false);
    }
  }
}
