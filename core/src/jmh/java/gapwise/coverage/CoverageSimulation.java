package gapwise.coverage;

import gapwise.effect.Interval;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;

/**
 * Draws series of patients whose true rates are known, makes every interval from them and counts
 * how often it holds the truth. The same seed gives the same table whatever the number of threads:
 * each replicate has a generator split off that of its scenario.
 */
public final class CoverageSimulation {
  /** Any number would do; this one is written into the page. */
  private static final long SEED = 20260;

  private CoverageSimulation() {}

  /**
   * Prints the tables and writes every scenario to a file.
   *
   * @param arguments replicates of a scenario, threads, and the file to write
   */
  public static void main(String[] arguments)
      throws InterruptedException, ExecutionException, IOException {
    int replicates = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
    int threads =
        arguments.length > 1
            ? Integer.parseInt(arguments[1])
            : Runtime.getRuntime().availableProcessors();
    List<Scenario> scenarios = Scenario.all();
    ForkJoinPool pool = new ForkJoinPool(threads);
    List<Map<Key, Coverage>> found;
    try {
      found =
          pool.submit(
                  () ->
                      IntStream.range(0, scenarios.size())
                          .parallel()
                          .mapToObj(at -> run(scenarios.get(at), at, replicates))
                          .toList())
              .get();
    } finally {
      pool.shutdown();
    }
    CoverageTables tables = new CoverageTables(scenarios, found);
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    tables.markdown().forEach(out::println);
    if (arguments.length > 2) {
      Files.write(Path.of(arguments[2]), tables.csv());
    }
  }

  private static Map<Key, Coverage> run(Scenario scenario, int at, int replicates) {
    Map<Key, Coverage> sums = new HashMap<>();
    SplittableRandom ofScenario = new SplittableRandom(SEED + at);
    for (int replicate = 0; replicate < replicates; replicate++) {
      Drawn drawn = scenario.draw(ofScenario.split());
      for (Way way : Way.values()) {
        Map<Target, Interval> found = way.intervals(drawn);
        for (Target target : Target.values()) {
          sums.merge(
              new Key(way, target),
              one(Optional.ofNullable(found.get(target)), drawn.truth(target)),
              Coverage::and);
        }
      }
    }
    return sums;
  }

  /** A way and what its interval is to hold. */
  record Key(Way way, Target target) {}

  private static Coverage one(Optional<Interval> interval, double truth) {
    if (interval.isEmpty()) {
      return new Coverage(1, 0, 0, 0);
    }
    double lower = interval.get().lower();
    double upper = interval.get().upper();
    return new Coverage(1, 1, lower <= truth && truth <= upper ? 1 : 0, 100 * (upper - lower));
  }
}
