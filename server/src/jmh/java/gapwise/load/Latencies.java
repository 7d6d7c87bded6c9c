package gapwise.load;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * How long answers took.
 *
 * @param p50 time within which half of them came, in milliseconds
 * @param p99 time within which 99 of 100 came, in milliseconds
 * @param perSecond answers in a second, all users together
 */
record Latencies(double p50, double p99, double perSecond) {

  /** What is measured: the answer to one of the questions, by its number. */
  @FunctionalInterface
  interface Work {
    void on(int question) throws Exception;
  }

  /** What several stretches of asking gave together. */
  static final class Sum {
    private final AtomicInteger next;
    private final List<Long> took = new ArrayList<>();
    private double seconds;

    /** Begins with the first question. */
    Sum() {
      this(0);
    }

    private Sum(int first) {
      next = new AtomicInteger(first);
    }

    /**
     * Begins anew with the question at which this one stopped, so that nothing is asked that was
     * answered just before and may be remembered.
     */
    Sum onwards() {
      return new Sum(next.get());
    }

    /**
     * Asks everything in turn and again, going on from where it stopped, by so many users at once,
     * each waiting for an answer before asking on.
     *
     * @param questions how many there are
     * @param duration no question is begun after it
     */
    void add(int questions, int users, Duration duration, Work work)
        throws InterruptedException, ExecutionException {
      long start = System.nanoTime();
      Callable<List<Long>> user =
          () -> {
            List<Long> own = new ArrayList<>();
            long now = System.nanoTime();
            while (now - start < duration.toNanos()) {
              work.on(next.getAndIncrement() % questions);
              long after = System.nanoTime();
              own.add(after - now);
              now = after;
            }
            return own;
          };
      ExecutorService threads = Executors.newFixedThreadPool(users);
      try {
        for (Future<List<Long>> done :
            threads.invokeAll(IntStream.range(0, users).mapToObj(i -> user).toList())) {
          took.addAll(done.get());
        }
      } finally {
        threads.shutdown();
      }
      seconds += (System.nanoTime() - start) / 1e9;
    }

    Latencies latencies() {
      took.sort(null);
      return new Latencies(
          milliseconds(took, 0.50), milliseconds(took, 0.99), took.size() / seconds);
    }
  }

  /** The nearest-rank percentile. */
  private static double milliseconds(List<Long> sorted, double share) {
    return sorted.get((int) Math.ceil(share * sorted.size()) - 1) / 1e6;
  }
}
