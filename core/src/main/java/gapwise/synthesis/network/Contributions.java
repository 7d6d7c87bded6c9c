package gapwise.synthesis.network;

import gapwise.budget.Work;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * How much each direct comparison contributes to a comparison of the network. The row of the hat
 * matrix for a comparison is a flow of size 1 from one treatment to the other through the direct
 * comparisons, each as sure as the studies that hold it (König, Krahn and Binder, Stat Med
 * 2013;32:5414; a study of several arms as a comparison of each pair: Rücker, Res Synth Methods
 * 2012;3:312). The flow is taken apart into streams, the shortest way first, and a stream is shared
 * evenly among the comparisons on its way (Papakonstantinou et al., F1000Research 2018;7:610).
 */
final class Contributions {
  /** Streams smaller than this are rounding. */
  private static final double ROUNDING = 1e-10;

  /** Comparisons told times direct ones, above which this takes longer than anyone waits. */
  private static final long MOST_PAIRS = 100_000;

  private final NetworkFrame frame;
  private final double[][] sureness;
  private final double[][] variances;

  private Contributions(NetworkFrame frame, double[][] sureness, double[][] variances) {
    this.frame = frame;
    this.sureness = sureness;
    this.variances = variances;
  }

  /**
   * Of a network.
   *
   * @param fit at the variance between studies
   * @return empty for a network too large, or where a study's covariance lets a comparison of two
   *     of its arms count below 0
   */
  static Optional<Contributions> of(
      NetworkFrame frame, NetworkMeans.NetworkFit fit, double tauSquared) {
    int size = frame.index().size();
    double[][] sureness = new double[size][size];
    for (NetworkStudy study : frame.studies()) {
      if (!addTo(sureness, study, frame.index(), tauSquared)) {
        return Optional.empty();
      }
    }
    long direct = 0;
    double[][] variances = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < i; j++) {
        direct += sureness[i][j] > 0 ? 1 : 0;
        if (frame.forest().piece(i) == frame.forest().piece(j)) {
          variances[i][j] = fit.variance(frame.contrast(i, j));
          variances[j][i] = variances[i][j];
        }
      }
    }
    return direct * size * size > MOST_PAIRS
        ? Optional.empty()
        : Optional.of(new Contributions(frame, sureness, variances));
  }

  /** Adds what a study knows of each pair of its arms: its information, off the diagonal. */
  private static boolean addTo(
      double[][] sureness, NetworkStudy study, TreatmentIndex index, double tauSquared) {
    int contrasts = study.contrasts();
    RealMatrix covariance = new Array2DRowRealMatrix(contrasts, contrasts);
    for (int i = 0; i < contrasts; i++) {
      for (int j = 0; j < contrasts; j++) {
        covariance.setEntry(
            i, j, study.covariance().get(i).get(j) + (i == j ? tauSquared : tauSquared / 2));
      }
    }
    LUDecomposition solver = new LUDecomposition(covariance, Double.MIN_NORMAL);
    if (!solver.getSolver().isNonSingular()) {
      return false;
    }
    RealMatrix information = solver.getSolver().getInverse();
    for (int i = 0; i <= contrasts; i++) {
      for (int j = 0; j < i; j++) {
        double known = j == 0 ? rowSum(information, i - 1) : -information.getEntry(i - 1, j - 1);
        if (known < -ROUNDING * information.getEntry(i - 1, i - 1)) {
          return false;
        }
        int one = index.of(study.treatments().get(i));
        int other = index.of(study.treatments().get(j));
        sureness[one][other] += Math.max(0, known);
        sureness[other][one] = sureness[one][other];
      }
    }
    return true;
  }

  private static double rowSum(RealMatrix matrix, int row) {
    return Arrays.stream(matrix.getRow(row)).sum();
  }

  /** Shares of the direct comparisons in one treatment against another of its piece; sum 1. */
  List<Contribution> of(int one, int other) {
    Work.check();
    int size = sureness.length;
    double[][] flow = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        // The covariance of two comparisons by variances alone: half of crossed less parallel.
        double fall =
            (variances[i][other] + variances[j][one] - variances[i][one] - variances[j][other]) / 2;
        flow[i][j] = Math.max(0, sureness[i][j] * fall);
      }
    }
    double[][] shares = new double[size][size];
    for (List<Integer> way = way(flow, one, other); way.size() > 1; way = way(flow, one, other)) {
      double stream = Double.POSITIVE_INFINITY;
      for (int i = 1; i < way.size(); i++) {
        stream = Math.min(stream, flow[way.get(i - 1)][way.get(i)]);
      }
      for (int i = 1; i < way.size(); i++) {
        int from = way.get(i - 1);
        int to = way.get(i);
        flow[from][to] -= stream;
        shares[Math.min(from, to)][Math.max(from, to)] += stream / (way.size() - 1);
      }
    }
    List<Contribution> told = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      for (int j = i + 1; j < size; j++) {
        if (shares[i][j] > ROUNDING) {
          told.add(
              new Contribution(
                  frame.index().names().get(i), frame.index().names().get(j), shares[i][j]));
        }
      }
    }
    return told;
  }

  /** The shortest way down a flow, of equal ones the first in the order of treatments. */
  private static List<Integer> way(double[][] flow, int from, int to) {
    Map<Integer, Integer> before = new TreeMap<>();
    Deque<Integer> next = new ArrayDeque<>(List.of(from));
    before.put(from, from);
    while (!next.isEmpty() && !before.containsKey(to)) {
      int here = next.remove();
      for (int there = 0; there < flow.length; there++) {
        if (flow[here][there] > ROUNDING && before.putIfAbsent(there, here) == null) {
          next.add(there);
        }
      }
    }
    List<Integer> way = new ArrayList<>();
    if (before.containsKey(to)) {
      for (Integer at = to; at != null && at != from; at = before.get(at)) {
        way.add(0, at);
      }
      way.add(0, from);
    }
    return way;
  }
}
