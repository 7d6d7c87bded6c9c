package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
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
    int replicates = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
    int threads =
        arguments.length > 1
            ? Integer.parseInt(arguments[1])
            : Runtime.getRuntime().availableProcessors();
    List<Scenario> scenarios = Scenario.all();
    ForkJoinPool pool = new ForkJoinPool(threads);
    List<Map<Method, Coverage>> found;
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

  private static Map<Method, Coverage> run(Scenario scenario, int at, int replicates) {
    Map<Method, Coverage> sums = new EnumMap<>(Method.class);
    SplittableRandom ofScenario = new SplittableRandom(SEED + at);
    for (int replicate = 0; replicate < replicates; replicate++) {
      SplittableRandom random = ofScenario.split();
      List<ArmCounts> series = scenario.draw(random);
      double further = scenario.drawRate(random);
      for (Method method : Method.values()) {
        double truth = method.predicts() ? further : scenario.median();
        sums.merge(method, one(method.interval(series), truth), Coverage::and);
      }
    }
    return sums;
  }

  private static Coverage one(Optional<Interval> interval, double truth) {
    if (interval.isEmpty()) {
      return new Coverage(1, 0, 0, 0);
    }
    double lower = interval.get().lower();
    double upper = interval.get().upper();
    return new Coverage(1, 1, lower <= truth && truth <= upper ? 1 : 0, 100 * (upper - lower));
  }

  /** All scenarios that match, together. */
  static Coverage together(
      List<Scenario> scenarios,
      List<Map<Method, Coverage>> found,
      Method method,
      java.util.function.Predicate<Scenario> which) {
    List<Coverage> parts = new ArrayList<>();
    for (int i = 0; i < scenarios.size(); i++) {
      if (which.test(scenarios.get(i))) {
        parts.add(found.get(i).get(method));
      }
    }
    return parts.stream().reduce(Coverage.NOTHING, Coverage::and);
  }
}
