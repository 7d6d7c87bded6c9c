package gapwise.synthesis.multilevel;

import gapwise.numeric.ScannedMaximum;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The highest point of the likelihood of two variances, neither below 0.
 *
 * <p>Idea: the likelihood may have its top on an edge (either variance 0) and may have more than
 * one hump. So both edges are searched by themselves on their whole length, the inside is looked at
 * on a coarse grid of powers of ten, and from its three highest humps steps by the average
 * information climb to the top. The highest of all these is taken, an edge before an equal point
 * inside; it is never below the model with one variance alone. A top counts as found if no allowed
 * direction leads up from it.
 */
final class VarianceSearch {
  private static final double[] SHARES = {1e-9, 1e-7, 1e-5, 1e-4, 1e-3, 0.01, 0.03, 0.1, 0.3, 1};
  private static final int CLIMBS = 3;
  private static final int MOST_STEPS = 200;
  private static final int MOST_DOUBLINGS = 200;

  /** Nearer to an edge than this share of the range, the edge's own top is the better answer. */
  private static final double AT_EDGE = 1e-13;

  /** A rise of the log likelihood below this says nothing. */
  private static final double FLAT = 1e-9;

  private final ClusteredRows rows;
  private final boolean restricted;
  private final double range;

  /**
   * A search.
   *
   * @param range a variance as large as the effects can tell, above 0
   */
  VarianceSearch(ClusteredRows rows, boolean restricted, double range) {
    this.rows = rows;
    this.restricted = restricted;
    this.range = range;
  }

  /**
   * What was found.
   *
   * @param converged whether no allowed direction leads up
   */
  record Top(double between, double within, double logLikelihood, boolean converged) {}

  /** The top along the edge where the variance between clusters is 0. */
  Top withinOnly() {
    return edge(
        within -> fit(0, within).logLikelihood(restricted),
        within -> fit(0, within).slope(restricted).byWithin(),
        false);
  }

  /** The top along the edge where the variance within clusters is 0. */
  Top betweenOnly() {
    return edge(
        between -> fit(between, 0).logLikelihood(restricted),
        between -> fit(between, 0).slope(restricted).byBetween(),
        true);
  }

  /** The top everywhere. */
  Top highest() {
    List<Top> tops = new ArrayList<>();
    tops.add(withinOnly());
    tops.add(betweenOnly());
    Top edge = better(tops.get(0), tops.get(1));
    for (double[] start : starts()) {
      tops.add(climb(start[0], start[1]));
    }
    Top best = tops.stream().reduce(edge, VarianceSearch::better);
    boolean onEdge = best.between() == 0 || best.within() == 0;
    if (onEdge && risesInside(best)) {
      best =
          better(
              best,
              climb(Math.max(best.between(), 1e-3 * range), Math.max(best.within(), 1e-3 * range)));
    }
    boolean stillOnEdge = best.between() == 0 || best.within() == 0;
    return stillOnEdge && risesInside(best)
        ? new Top(best.between(), best.within(), best.logLikelihood(), false)
        : best;
  }

  private CovarianceFit fit(double between, double within) {
    return new CovarianceFit(rows, between, within);
  }

  private static Top better(Top one, Top other) {
    return other.logLikelihood() > one.logLikelihood() + 1e-12 * Math.abs(one.logLikelihood())
        ? other
        : one;
  }

  private boolean risesInside(Top top) {
    CovarianceFit.Slope slope = fit(top.between(), top.within()).slope(restricted);
    double gain =
        (top.between() == 0 ? slope.byBetween() : 0) + (top.within() == 0 ? slope.byWithin() : 0);
    boolean up =
        (top.between() == 0 && slope.byBetween() > 0)
            || (top.within() == 0 && slope.byWithin() > 0);
    return up && gain * range > FLAT;
  }

  private Top edge(DoubleUnaryOperator value, DoubleUnaryOperator slope, boolean between) {
    double upper = range;
    for (int i = 0; i < MOST_DOUBLINGS && slope.applyAsDouble(upper) > 0; i++) {
      upper *= 2;
    }
    if (slope.applyAsDouble(upper) > 0) {
      return top(upper, between, value, false);
    }
    ScannedMaximum.Maximum maximum = ScannedMaximum.find(value, slope, upper);
    return top(maximum.place(), between, value, maximum.converged());
  }

  private static Top top(
      double place, boolean between, DoubleUnaryOperator value, boolean converged) {
    return new Top(between ? place : 0, between ? 0 : place, value.applyAsDouble(place), converged);
  }

  /** The points of the grid that no neighbour exceeds, the highest first. */
  private List<double[]> starts() {
    int n = SHARES.length;
    double[][] heights = new double[n][n];
    for (int b = 0; b < n; b++) {
      for (int w = 0; w < n; w++) {
        heights[b][w] = fit(SHARES[b] * range, SHARES[w] * range).logLikelihood(restricted);
      }
    }
    List<int[]> humps = new ArrayList<>();
    for (int b = 0; b < n; b++) {
      for (int w = 0; w < n; w++) {
        if (isHump(heights, b, w)) {
          humps.add(new int[] {b, w});
        }
      }
    }
    humps.sort(Comparator.comparingDouble(at -> -heights[at[0]][at[1]]));
    return humps.stream()
        .limit(CLIMBS)
        .map(at -> new double[] {SHARES[at[0]] * range, SHARES[at[1]] * range})
        .toList();
  }

  private static boolean isHump(double[][] heights, int b, int w) {
    for (int i = Math.max(0, b - 1); i <= Math.min(heights.length - 1, b + 1); i++) {
      for (int j = Math.max(0, w - 1); j <= Math.min(heights.length - 1, w + 1); j++) {
        if (heights[i][j] > heights[b][w]) {
          return false;
        }
      }
    }
    return true;
  }

  /** Steps up from a point inside until the expected gain of a further one is nothing. */
  private Top climb(double fromBetween, double fromWithin) {
    double between = fromBetween;
    double within = fromWithin;
    CovarianceFit here = fit(between, within);
    double height = here.logLikelihood(restricted);
    double lastGain = Double.POSITIVE_INFINITY;
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] move = move(here.slope(restricted), here.curvature(), between, within);
      double gain = move[2];
      if (!(gain > 0) || (gain < FLAT && gain >= lastGain / 4)) {
        return new Top(between, within, height, gain < FLAT);
      }
      lastGain = gain;
      double part = 1;
      CovarianceFit next = fit(between + move[0], within + move[1]);
      while (gain >= FLAT && !(next.logLikelihood(restricted) > height) && part > 1e-9) {
        part /= 4;
        next = fit(between + part * move[0], within + part * move[1]);
      }
      here = next;
      between = next.between();
      within = next.within();
      height = next.logLikelihood(restricted);
      if (Math.min(between, within) < AT_EDGE * range) {
        return new Top(between, within, height, false);
      }
    }
    return new Top(between, within, height, false);
  }

  /**
   * The step by the average information, cut where it would take more than nine tenths of a
   * variance, and the gain that it promises.
   */
  private static double[] move(
      CovarianceFit.Slope slope, CovarianceFit.Curvature bend, double between, double within) {
    double both = bend.withinWithin() * bend.betweenBetween();
    double determinant = both - bend.withinBetween() * bend.withinBetween();
    double toWithin = slope.byWithin() / (2 * bend.withinWithin());
    double toBetween = slope.byBetween() / (2 * bend.betweenBetween());
    if (determinant > 1e-12 * both) {
      toWithin =
          (bend.betweenBetween() * slope.byWithin() - bend.withinBetween() * slope.byBetween())
              / determinant;
      toBetween =
          (bend.withinWithin() * slope.byBetween() - bend.withinBetween() * slope.byWithin())
              / determinant;
    }
    double part = Math.min(1, Math.min(allowed(toBetween, between), allowed(toWithin, within)));
    return new double[] {
      part * toBetween,
      part * toWithin,
      part * (toWithin * slope.byWithin() + toBetween * slope.byBetween())
    };
  }

  /** The part of a step after which a tenth is left. */
  private static double allowed(double step, double from) {
    return step < -0.9 * from ? 0.9 * from / -step : 1;
  }
}
