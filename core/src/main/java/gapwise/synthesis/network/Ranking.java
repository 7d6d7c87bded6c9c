package gapwise.synthesis.network;

import gapwise.budget.Work;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Ranks of treatments and how sure they are. The effects of all treatments are drawn many times
 * from their joint normal distribution and ranked each time (Salanti, Ades and Ioannidis, J Clin
 * Epidemiol 2011;64:163). One stream of random numbers from one seed, in one thread: the same plan
 * gives the same ranks.
 */
final class Ranking {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private final NetworkFrame frame;
  private final NetworkFit fit;
  private final double sign;
  private final List<SparseRow> values;

  /**
   * A ranking of a connected network.
   *
   * @param higherIsBetter whether treatments with higher effects are better
   */
  Ranking(NetworkFrame frame, NetworkFit fit, boolean higherIsBetter) {
    this.frame = frame;
    this.fit = fit;
    this.sign = higherIsBetter ? 1 : -1;
    this.values =
        IntStream.range(0, frame.index().size()).mapToObj(t -> frame.contrast(t, 0)).toList();
  }

  /** All treatments, in their order. */
  List<Ranked> all(RankDraws draws, double level) {
    int treatments = values.size();
    int[][] counts = counts(draws);
    List<Ranked> ranked = new ArrayList<>();
    for (int t = 0; t < treatments; t++) {
      List<Double> shares = new ArrayList<>();
      double mean = 0;
      for (int rank = 0; rank < treatments; rank++) {
        double share = counts[t][rank] / (double) draws.draws();
        shares.add(share);
        mean += share * (rank + 1);
      }
      double tail = (1 - level) / 2 * draws.draws();
      ranked.add(
          new Ranked(
              frame.index().names().get(t),
              pScore(t),
              shares,
              mean,
              first(counts[t], tail),
              treatments + 1 - first(reversed(counts[t]), tail)));
    }
    return ranked;
  }

  private double pScore(int treatment) {
    double sum = 0;
    for (int other = 0; other < values.size(); other++) {
      if (other != treatment) {
        SparseRow contrast = frame.contrast(treatment, other);
        double error = Math.sqrt(fit.variance(contrast));
        sum += NORMAL.cumulativeProbability(sign * fit.estimate(contrast) / error);
      }
    }
    return sum / (values.size() - 1);
  }

  /** How often each treatment has each rank. */
  private int[][] counts(RankDraws draws) {
    int treatments = values.size();
    int[][] counts = new int[treatments][treatments];
    SplittableRandom random = new SplittableRandom(draws.seed());
    double[] standard = new double[frame.model().parameters()];
    double[] drawn = new double[treatments];
    Integer[] order = new Integer[treatments];
    for (int d = 0; d < draws.draws(); d++) {
      Work.check();
      Arrays.setAll(standard, i -> normal(random));
      double[] parameters = fit.drawn(standard);
      Arrays.setAll(drawn, t -> -sign * values.get(t).at(parameters));
      Arrays.setAll(order, i -> i);
      Arrays.sort(order, Comparator.comparingDouble(t -> drawn[t]));
      for (int rank = 0; rank < treatments; rank++) {
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
