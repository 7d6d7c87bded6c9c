package gapwise.numeric;

import java.util.Arrays;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Kendall's score of two lists: pairs in the same order less pairs in opposite order (Kendall, Rank
 * Correlation Methods, 1948). Discordant pairs are counted as the exchanges of a merge sort, in n
 * log n steps (Knight, J Am Stat Assoc 1966;61:436).
 *
 * @param count length of the lists
 * @param value the score
 * @param tauB the score over the root of the pairs not tied in each list; empty if one is all ties
 * @param variance of the score when the lists do not hang together, ties allowed for
 * @param tied whether either list has ties
 * @param orderedPairs pairs tied in neither list
 */
public record KendallScore(
    int count, long value, OptionalDouble tauB, double variance, boolean tied, long orderedPairs) {

  /**
   * The score.
   *
   * @param x finite
   * @param y finite, as many
   */
  public static KendallScore of(double[] x, double[] y) {
    int n = x.length;
    Integer[] order = IntStream.range(0, n).boxed().toArray(Integer[]::new);
    Arrays.sort(
        order, Comparator.<Integer>comparingDouble(i -> x[i]).thenComparingDouble(i -> y[i]));
    double[] sortedX = IntStream.range(0, n).mapToDouble(i -> x[order[i]]).toArray();
    double[] byX = IntStream.range(0, n).mapToDouble(i -> y[order[i]]).toArray();
    Ties tiesX = new Ties();
    Ties tiesBoth = new Ties();
    int runX = 0;
    int runBoth = 0;
    for (int i = 0; i < n; i++) {
      boolean endX = i == n - 1 || sortedX[i] != sortedX[i + 1];
      boolean endBoth = endX || byX[i] != byX[i + 1];
      runX++;
      runBoth++;
      runX = endX ? tiesX.add(runX) : runX;
      runBoth = endBoth ? tiesBoth.add(runBoth) : runBoth;
    }
    long discordant = sortCounting(byX, new double[n], 0, n);
    Ties tiesY = new Ties();
    int runY = 0;
    for (int i = 0; i < n; i++) {
      runY++;
      runY = i == n - 1 || byX[i] != byX[i + 1] ? tiesY.add(runY) : runY;
    }
    long all = pairs(n);
    long ordered = all - tiesX.pairs - tiesY.pairs + tiesBoth.pairs;
    double scale = Math.sqrt((double) (all - tiesX.pairs)) * Math.sqrt(all - tiesY.pairs);
    long score = ordered - 2 * discordant;
    return new KendallScore(
        n,
        score,
        scale > 0 ? OptionalDouble.of(score / scale) : OptionalDouble.empty(),
        variance(n, tiesX, tiesY),
        tiesX.pairs + tiesY.pairs > 0,
        ordered);
  }

  /** Sums over the groups of equal values. */
  private static final class Ties {
    private long pairs;
    private double first;
    private double second;
    private double third;

    /** Adds a group of a size and starts the next at 0. */
    int add(int size) {
      double t = size;
      pairs += pairs(size);
      first += t * (t - 1) * (2 * t + 5);
      second += t * (t - 1);
      third += t * (t - 1) * (t - 2);
      return 0;
    }
  }

  private static double variance(double n, Ties x, Ties y) {
    double variance = (n * (n - 1) * (2 * n + 5) - x.first - y.first) / 18;
    if (n > 1) {
      variance += x.second * y.second / (2 * n * (n - 1));
    }
    if (n > 2) {
      variance += x.third * y.third / (9 * n * (n - 1) * (n - 2));
    }
    return variance;
  }

  private static long pairs(long size) {
    return size * (size - 1) / 2;
  }

  /** Sorts a stretch and counts the pairs that stood in falling order. */
  private static long sortCounting(double[] values, double[] spare, int from, int to) {
    if (to - from < 2) {
      return 0;
    }
    int middle = (from + to) >>> 1;
    long falling =
        sortCounting(values, spare, from, middle) + sortCounting(values, spare, middle, to);
    int left = from;
    int right = middle;
    for (int i = from; i < to; i++) {
      if (left < middle && (right == to || values[left] <= values[right])) {
        spare[i] = values[left++];
      } else {
        falling += middle - left;
        spare[i] = values[right++];
      }
    }
    System.arraycopy(spare, from, values, from, to - from);
    return falling;
  }

  /**
   * Twice the smaller tail of the score's exact distribution, at most 1, for lists without ties.
   * The number of orders of n with d discordant pairs follows from that of n - 1 by summing over
   * the place of the last.
   *
   * @throws IllegalStateException if there are ties
   */
  public double exactTwoSidedP() {
    if (tied) {
      throw new IllegalStateException("with ties there is no such distribution");
    }
    double[] share = {1};
    for (int n = 2; n <= count; n++) {
      double[] next = new double[(int) pairs(n) + 1];
      for (int d = 0; d < next.length; d++) {
        double sum = 0;
        for (int place = Math.max(0, d - share.length + 1); place < n && place <= d; place++) {
          sum += share[d - place];
        }
        next[d] = sum / n;
      }
      share = next;
    }
    int discordant = (int) ((pairs(count) - value) / 2);
    double below = 0;
    for (int d = 0; d <= Math.min(discordant, share.length - 1 - discordant); d++) {
      below += share[d];
    }
    return Math.min(1, 2 * below);
  }
}
