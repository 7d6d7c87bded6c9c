package gapwise.errorrate;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;

/**
 * Draws studies that do not differ by what is tested and counts how often a test at 5 % says that
 * they do. The same seed gives the same table whatever the number of threads: each replicate has a
 * generator split off that of its world.
 */
public final class ErrorRateSimulation {
  /** Any number would do; this one is written into the page. */
  private static final long SEED = 20261;

  private static final double NOMINAL = 0.05;

  private ErrorRateSimulation() {}

  /**
   * How one test fared in one world.
   *
   * @param tests how many times there was one
   * @param rejected how often it rejected
   */
  private record Rate(int tests, int rejected) {
    Rate and(OptionalDouble pValue) {
      return pValue.isEmpty()
          ? this
          : new Rate(tests + 1, rejected + (pValue.getAsDouble() < NOMINAL ? 1 : 0));
    }

    double percent() {
      return 100.0 * rejected / tests;
    }
  }

  /**
   * Prints the table.
   *
   * @param arguments replicates of a world, and threads
   */
  public static void main(String[] arguments) throws InterruptedException, ExecutionException {
    int replicates = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
    int threads = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 2;
    List<World> worlds = World.all();
    ForkJoinPool pool = new ForkJoinPool(threads);
    List<Map<Tested, Rate>> found;
    try {
      found =
          pool.submit(
                  () ->
                      IntStream.range(0, worlds.size())
                          .parallel()
                          .mapToObj(at -> run(worlds.get(at), at, replicates))
                          .toList())
              .get();
    } finally {
      pool.shutdown();
    }
    print(worlds, found, new PrintStream(System.out, true, StandardCharsets.UTF_8));
  }

  private static Map<Tested, Rate> run(World world, int at, int replicates) {
    Map<Tested, Rate> rates = new EnumMap<>(Tested.class);
    SplittableRandom ofWorld = new SplittableRandom(SEED + at);
    for (int replicate = 0; replicate < replicates; replicate++) {
      SplittableRandom random = ofWorld.split();
      World.Drawn studies = world.studies(random);
      World.Drawn teams = world.teams(random);
      for (Tested one : Tested.values()) {
        OptionalDouble pValue = one.pValue(one.ofTeams() ? teams : studies);
        rates.put(one, rates.getOrDefault(one, new Rate(0, 0)).and(pValue));
      }
    }
    return rates;
  }

  private static void print(List<World> worlds, List<Map<Tested, Rate>> found, PrintStream out) {
    StringBuilder head = new StringBuilder("| test |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (int units : World.numbersOfUnits()) {
      head.append(" ").append(units).append(" |");
      rule.append(" --- |");
    }
    out.println(head);
    out.println(rule);
    for (Tested one : Tested.values()) {
      StringBuilder line = new StringBuilder("| " + one.words() + " |");
      for (int units : World.numbersOfUnits()) {
        line.append(cell(worlds, found, one, units));
      }
      out.println(line);
    }
  }

  /** The least and the greatest rate over the standard deviations between studies. */
  private static String cell(
      List<World> worlds, List<Map<Tested, Rate>> found, Tested one, int units) {
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < worlds.size(); i++) {
      Rate rate = found.get(i).getOrDefault(one, new Rate(0, 0));
      if (worlds.get(i).units() == units && rate.tests() > 0) {
        least = Math.min(least, rate.percent());
        greatest = Math.max(greatest, rate.percent());
      }
    }
    return least > greatest
        ? " - |"
        : String.format(Locale.ROOT, " %.1f to %.1f |", least, greatest);
  }
}
