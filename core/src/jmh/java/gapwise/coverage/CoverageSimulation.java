package gapwise.coverage;

import gapwise.effect.Interval;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;

/**
 * Draws series of patients whose true values are known, makes every interval from them and counts
 * how often it holds the truth. The same seed gives the same table whatever the number of threads:
 * each replicate has a generator split off that of its scenario.
 */
public final class CoverageSimulation {
  /** Any number would do; this one is written into the page. */
  private static final long SEED = 20260;

  private CoverageSimulation() {}

  /**
   * Prints the tables and writes every scenario to a file for each family.
   *
   * @param arguments replicates of a scenario, threads, the folder of the files, and the names of
   *     families (all if none is named)
   */
  public static void main(String[] arguments)
      throws InterruptedException, ExecutionException, IOException {
    int replicates = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
    int threads =
        arguments.length > 1
            ? Integer.parseInt(arguments[1])
            : Runtime.getRuntime().availableProcessors();
    List<String> names = Arrays.stream(arguments).skip(3).toList();
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      for (Family<?> family : Family.all()) {
        if (names.isEmpty() || names.contains(family.name())) {
          CoverageTables<?> tables = pool.submit(() -> tables(family, replicates)).get();
          tables.markdown().forEach(out::println);
          if (arguments.length > 2) {
            Files.write(
                Path.of(arguments[2], "coverage-" + family.name() + ".csv"), tables.csv());
          }
        }
      }
    } finally {
      pool.shutdown();
    }
  }

  private static <D extends Drawn> CoverageTables<D> tables(Family<D> family, int replicates) {
    return new CoverageTables<>(
        family,
        IntStream.range(0, family.scenarios().size())
            .parallel()
            .mapToObj(at -> run(family, at, replicates * family.times()))
            .toList());
  }

  private static <D extends Drawn> Map<Key, Coverage> run(
      Family<D> family, int at, int replicates) {
    Map<Key, Coverage> sums = new HashMap<>();
    SplittableRandom ofScenario = new SplittableRandom(SEED + at);
    for (int replicate = 0; replicate < replicates; replicate++) {
      D drawn = family.scenarios().get(at).draw().apply(ofScenario.split());
      for (Way<D> way : family.ways()) {
        Map<Target, Interval> found = way.intervals().apply(drawn);
        for (Target target : family.targets()) {
          sums.merge(
              new Key(way.words(), target),
              one(
                  family.size(),
                  Optional.ofNullable(found.get(target)),
                  drawn.truth(target)),
              Coverage::and);
        }
      }
    }
    return sums;
  }

  /** A way and what its interval is to hold. */
  record Key(String way, Target target) {}

  private static Coverage one(Family.Size size, Optional<Interval> interval, double truth) {
    if (interval.isEmpty()) {
      return new Coverage(1, 0, 0, 0);
    }
    double lower = interval.get().lower();
    double upper = interval.get().upper();
    return new Coverage(1, 1, lower <= truth && truth <= upper ? 1 : 0, size.of(lower, upper));
  }
}
