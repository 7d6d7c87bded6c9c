package gapwise.load;

import java.util.Arrays;
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
 */
record Latencies(double p50, double p99) {

  /** What is measured. */
  @FunctionalInterface
  interface Work {
    void on(Asked asked) throws Exception;
  }

  /**
   * Asks everything in turn, by so many users at once, each waiting for an answer before asking on.
   *
   * @param times number of answers waited for
   */
  static Latencies of(List<Asked> asked, int users, int times, Work work)
      throws InterruptedException, ExecutionException {
    long[] took = new long[times];
    AtomicInteger next = new AtomicInteger();
    Callable<Void> user =
        () -> {
          for (int i = next.getAndIncrement(); i < times; i = next.getAndIncrement()) {
            long start = System.nanoTime();
            work.on(asked.get(i % asked.size()));
            took[i] = System.nanoTime() - start;
          }
          return null;
        };
    ExecutorService threads = Executors.newFixedThreadPool(users);
    try {
      for (Future<Void> done :
          threads.invokeAll(IntStream.range(0, users).mapToObj(i -> user).toList())) {
        done.get();
      }
    } finally {
      threads.shutdown();
    }
    Arrays.sort(took);
    return new Latencies(milliseconds(took, 0.50), milliseconds(took, 0.99));
  }

  /** The nearest-rank percentile. */
  private static double milliseconds(long[] sorted, double share) {
    return sorted[(int) Math.ceil(share * sorted.length) - 1] / 1e6;
  }
}
