package gapwise.synthesis.regression;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * P values of a regression without a distribution: the moderators of the studies are exchanged
 * between them, while each effect keeps its variance, and all is fitted anew (Higgins and Thompson,
 * Stat Med 2004;23:1663). A p value is the share of arrangements whose statistic is at least as far
 * from 0 as the one seen. If there are no more different arrangements than were asked for, each is
 * taken once; else so many are drawn at random and the arrangement seen is counted with them
 * (Phipson and Smyth, Stat Appl Genet Mol Biol 2010;9:39), so that no p value is 0.
 *
 * @param exact whether every arrangement was taken
 * @param arrangements how many were taken, the one seen among them
 * @param termPValues of each term but the intercept, whose value does not depend on who has which
 *     moderators
 * @param overallPValue of all terms together
 */
public record PermutationTest(
    boolean exact, long arrangements, Map<String, Double> termPValues, double overallPValue) {
  /** Arrangements are drawn one after the other and fitted side by side, so many at a time. */
  private static final int BATCH = 256;

  /** Statistics nearer to the one seen differ by rounding only and count as equal. */
  private static final double ROUNDING = 1e-8;

  /**
   * Tests.
   *
   * @param sample the effects
   * @param design whose regression on them can be estimated
   * @param permutations how many arrangements at most, at least 1
   * @param seed of the random arrangements; the same seed gives the same p values however many
   *     threads there are
   */
  public static PermutationTest of(
      EffectSample sample,
      DesignMatrix design,
      RegressionSettings settings,
      int permutations,
      long seed) {
    Arrangements arrangements = Arrangements.of(design, permutations, seed);
    double[] seen = statistics(sample, design, settings);
    long[] asFar = new long[seen.length];
    long taken = 0;
    Work work = Work.current();
    List<List<Integer>> batch = arrangements.next(BATCH);
    while (!batch.isEmpty()) {
      Work.check();
      List<List<Integer>> now = batch;
      List<boolean[]> found =
          IntStream.range(0, now.size())
              .parallel()
              .mapToObj(
                  i ->
                      work.join(
                          () -> asFar(seen, statistics(sample, design.at(now.get(i)), settings))))
              .toList();
      for (boolean[] one : found) {
        for (int j = 0; j < one.length; j++) {
          asFar[j] += one[j] ? 1 : 0;
        }
      }
      taken += found.size();
      batch = arrangements.next(BATCH);
    }
    int own = arrangements.exact() ? 0 : 1;
    Map<String, Double> terms = new LinkedHashMap<>();
    for (int j = 0; j < design.columns(); j++) {
      if (!design.terms().get(j).equals(DesignMatrix.INTERCEPT)) {
        terms.put(design.terms().get(j), (double) (asFar[j] + own) / (taken + own));
      }
    }
    return new PermutationTest(
        arrangements.exact(),
        taken + own,
        terms,
        (double) (asFar[seen.length - 1] + own) / (taken + own));
  }

  /** Each coefficient over its standard error, and the statistic of all moderators. */
  private static double[] statistics(
      EffectSample sample, DesignMatrix design, RegressionSettings settings) {
    Work.check();
    double[] statistics = new double[design.columns() + 1];
    Arrays.fill(statistics, Double.POSITIVE_INFINITY);
    Regression.estimate(sample, design, settings)
        .ifPresent(
            fit -> {
              for (int j = 0; j < design.columns(); j++) {
                statistics[j] =
                    Math.abs(
                        fit.coefficients()
                            .get(j)
                            .value()
                            .statistic()
                            .orElse(Double.POSITIVE_INFINITY));
              }
              statistics[design.columns()] =
                  fit.moderatorTest().map(WaldTest::statistic).orElse(Double.POSITIVE_INFINITY);
            });
    return statistics;
  }

  private static boolean[] asFar(double[] seen, double[] found) {
    boolean[] asFar = new boolean[seen.length];
    for (int j = 0; j < seen.length; j++) {
      asFar[j] = !(found[j] < seen[j] * (1 - ROUNDING));
    }
    return asFar;
  }

  /** The arrangements of the rows of a design, one after the other. */
  private static final class Arrangements {
    private final boolean exact;
    private final int[] kinds;
    private final Random random;
    private int left;
    private boolean more = true;

    private Arrangements(int[] kinds, boolean exact, int left, long seed) {
      this.kinds = kinds;
      this.exact = exact;
      this.left = left;
      this.random = new Random(seed);
    }

    static Arrangements of(DesignMatrix design, int permutations, long seed) {
      Map<List<Double>, Integer> kinds = new LinkedHashMap<>();
      int[] kindOf = new int[design.rows()];
      for (int i = 0; i < kindOf.length; i++) {
        List<Double> row = Arrays.stream(design.row(i)).boxed().toList();
        // Rows that say the same are one kind, told by the first of them.
        kindOf[i] = kinds.computeIfAbsent(row, first -> -1);
        if (kindOf[i] < 0) {
          kindOf[i] = i;
          kinds.put(row, i);
        }
      }
      boolean exact = different(kindOf) <= permutations;
      if (exact) {
        Arrays.sort(kindOf);
      }
      return new Arrangements(kindOf, exact, permutations, seed);
    }

    /** k!/(m1! m2! ...), as far as a double tells it. */
    private static double different(int[] kinds) {
      double count = 1;
      Map<Integer, Integer> met = new LinkedHashMap<>();
      for (int i = 0; i < kinds.length; i++) {
        int times = met.merge(kinds[i], 1, Integer::sum);
        count = count * (i + 1) / times;
      }
      return Math.rint(count);
    }

    boolean exact() {
      return exact;
    }

    List<List<Integer>> next(int most) {
      List<List<Integer>> batch = new ArrayList<>();
      while (batch.size() < most && (exact ? more : left > 0)) {
        if (exact) {
          batch.add(Arrays.stream(kinds).boxed().toList());
          more = step();
        } else {
          shuffle();
          batch.add(Arrays.stream(kinds).boxed().toList());
          left--;
        }
      }
      return batch;
    }

    /** The next arrangement in the order of a dictionary; false if this was the last. */
    private boolean step() {
      int i = kinds.length - 2;
      while (i >= 0 && kinds[i] >= kinds[i + 1]) {
        i--;
      }
      if (i < 0) {
        return false;
      }
      int j = kinds.length - 1;
      while (kinds[j] <= kinds[i]) {
        j--;
      }
      swap(i, j);
      for (int a = i + 1, b = kinds.length - 1; a < b; a++, b--) {
        swap(a, b);
      }
      return true;
    }

    private void shuffle() {
      for (int i = kinds.length - 1; i > 0; i--) {
        swap(i, random.nextInt(i + 1));
      }
    }

    private void swap(int a, int b) {
      int kind = kinds[a];
      kinds[a] = kinds[b];
      kinds[b] = kind;
    }
  }
}
