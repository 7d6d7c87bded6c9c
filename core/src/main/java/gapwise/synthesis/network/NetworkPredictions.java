package gapwise.synthesis.network;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.heterogeneity.UnknownSpread;
import gapwise.synthesis.heterogeneity.UnknownSpread.Point;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where differences between treatments would lie in a further study. */
@FunctionalInterface
public interface NetworkPredictions {
  /** One treatment less another of the same piece, by places from 0. */
  Interval of(int one, int other);

  /** How the variance between studies is taken. */
  enum Spread {
    /**
     * As not known: {@link UnknownSpread}, whatever the estimator, since only the likelihood says
     * how sure it is.
     */
    UNKNOWN,
    /**
     * As its estimate: Student's t on the degrees of freedom of Q less one, with the variances of
     * the mean and between studies added, which for two treatments is the usual one on k - 2
     * (Higgins, Thompson and Spiegelhalter, J R Stat Soc A 2009;172:137; the count for networks is
     * our reading).
     */
    T_K_MINUS_2
  }

  /** With the variance between studies as estimated. */
  static NetworkPredictions estimated(NetworkFrame frame, double tauSquared, double level) {
    NetworkFit fit = frame.fitAt(tauSquared);
    double multiplier =
        ReferenceDistribution.studentT(frame.degreesOfFreedom() - 1).multiplier(level);
    return (one, other) -> {
      SparseRow contrast = frame.contrast(one, other);
      double half = multiplier * Math.sqrt(fit.variance(contrast) + tauSquared);
      double middle = fit.estimate(contrast);
      return new Interval(middle - half, middle + half);
    };
  }

  /** With the variance between studies as not known; empty where that takes too long. */
  static Optional<NetworkPredictions> unknown(NetworkFrame frame, double tauSquared, double level) {
    if (frame.sample().size() > UnknownSpread.MOST_ROWS) {
      return Optional.empty();
    }
    double precision = 0;
    for (int row = 0; row < frame.sample().size(); row++) {
      precision += 1 / frame.sample().variance(row) / frame.sample().size();
    }
    return UnknownSpread.ofOne(
            tau -> frame.logLikelihood(tau * tau, true),
            1 / Math.sqrt(precision),
            Math.sqrt(tauSquared))
        .map(spread -> unknown(frame, spread, level));
  }

  private static NetworkPredictions unknown(
      NetworkFrame frame, UnknownSpread spread, double level) {
    int size = frame.index().size();
    int[][] places = new int[size][size];
    List<SparseRow> contrasts = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        if (i != j && frame.forest().piece(i) == frame.forest().piece(j)) {
          places[i][j] = contrasts.size();
          contrasts.add(frame.contrast(i, j));
        }
      }
    }
    List<Point> points = spread.points();
    double[][] means = new double[contrasts.size()][points.size()];
    double[][] deviations = new double[contrasts.size()][points.size()];
    for (int p = 0; p < points.size(); p++) {
      double tau = points.get(p).first();
      NetworkFit fit = frame.fitAt(tau * tau);
      double[] variances = fit.variances(contrasts);
      for (int c = 0; c < variances.length; c++) {
        means[c][p] = fit.estimate(contrasts.get(c));
        deviations[c][p] = Math.hypot(Math.sqrt(variances[c]), tau);
      }
    }
    return (one, other) ->
        spread.limits(means[places[one][other]], deviations[places[one][other]], level);
  }
}
