package gapwise.synthesis.network;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Ranks of treatments and how sure they are. The effects of all treatments are drawn many times
 * from their joint normal distribution and ranked each time (Salanti, Ades and Ioannidis, J Clin
 * Epidemiol 2011;64:163). One stream of random numbers from one seed, in one thread: the same plan
 * gives the same ranks.
 */
public final class Ranking {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private final List<String> treatments;
  private final JointEffects effects;
  private final double sign;

  /**
   * A ranking of a connected network.
   *
   * @param treatments all of them, in their order
   * @param higherIsBetter whether treatments with higher effects are better
   */
  public Ranking(List<String> treatments, JointEffects effects, boolean higherIsBetter) {
    this.treatments = List.copyOf(treatments);
    this.effects = effects;
    this.sign = higherIsBetter ? 1 : -1;
  }

  /** All treatments, in their order. */
  public List<Ranked> all(RankDraws draws, double level) {
    int size = treatments.size();
    int[][] counts = counts(draws);
    List<Ranked> ranked = new ArrayList<>();
    for (int t = 0; t < size; t++) {
      List<Double> shares = new ArrayList<>();
      double mean = 0;
      for (int rank = 0; rank < size; rank++) {
        double share = counts[t][rank] / (double) draws.draws();
        shares.add(share);
        mean += share * (rank + 1);
      }
      double tail = (1 - level) / 2 * draws.draws();
      ranked.add(
          new Ranked(
              treatments.get(t),
              pScore(t),
              shares,
              mean,
              first(counts[t], tail),
              size + 1 - first(reversed(counts[t]), tail)));
    }
    return ranked;
  }

  private double pScore(int treatment) {
    double sum = 0;
    for (int other = 0; other < treatments.size(); other++) {
      if (other != treatment) {
        Comparison effect = effects.comparison(treatment, other);
        sum += NORMAL.cumulativeProbability(sign * effect.estimate() / effect.standardError());
      }
    }
    return sum / (treatments.size() - 1);
  }

  /** How often each treatment has each rank. */
  private int[][] counts(RankDraws draws) {
    int size = treatments.size();
    int[][] counts = new int[size][size];
    SplittableRandom random = new SplittableRandom(draws.seed());
    double[] standard = new double[effects.parameters()];
    double[] drawn = new double[size];
    Integer[] order = new Integer[size];
    for (int d = 0; d < draws.draws(); d++) {
      Work.check();
      Arrays.setAll(standard, i -> normal(random));
      double[] values = effects.drawn(standard);
      Arrays.setAll(drawn, t -> -sign * values[t]);
      Arrays.setAll(order, i -> i);
      Arrays.sort(order, Comparator.comparingDouble(t -> drawn[t]));
      for (int rank = 0; rank < size; rank++) {
        counts[order[rank]][rank]++;
      }
    }
    return counts;
  }

  /** A standard normal value by inversion, whose bits depend on nothing but the seed. */
  private static double normal(SplittableRandom random) {
    return NORMAL.inverseCumulativeProbability(random.nextDouble(Double.MIN_NORMAL, 1));
  }

  /** The first rank up to which more than a tail of the draws lies, from 1. */
  private static int first(int[] counts, double tail) {
    double sum = 0;
    for (int rank = 0; rank < counts.length; rank++) {
      sum += counts[rank];
      if (sum > tail) {
        return rank + 1;
      }
    }
    return counts.length;
  }

  private static int[] reversed(int[] counts) {
    int[] turned = new int[counts.length];
    Arrays.setAll(turned, i -> counts[counts.length - 1 - i]);
    return turned;
  }
}
