package gapwise.synthesis.multilevel;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.heterogeneity.UnknownSpread;
import gapwise.synthesis.heterogeneity.UnknownSpread.Point;
import gapwise.synthesis.multilevel.ThreeLevelFit.Told;
import java.util.List;
import java.util.Optional;

/** Where the true value of a row of a further cluster lies: mean, between and within together. */
public enum FurtherCluster {
  /** Not asked for. */
  UNASKED,
  /** With both variances as not known: {@link UnknownSpread}, whichever likelihood estimates. */
  UNKNOWN_SPREAD,
  /**
   * With both as estimated: Student's t on clusters less two (Higgins, Thompson and Spiegelhalter,
   * J R Stat Soc A 2009;172:137, with clusters for their studies, which is our reading).
   */
  T_K_MINUS_2;

  /** The limits; empty under three clusters, or where they would take too long. */
  Optional<Interval> limits(ClusteredRows rows, ThreeLevelFit fit, double level) {
    if (this == UNASKED || !isTold(fit)) {
      return Optional.empty();
    }
    return this == T_K_MINUS_2 ? Optional.of(estimated(fit, level)) : unknown(rows, fit, level);
  }

  /** Whether clusters are enough to say anything of a further one. */
  static boolean isTold(ThreeLevelFit fit) {
    return fit.told() != Told.ONLY_WITHIN && fit.clusters() > 2;
  }

  private static Interval estimated(ThreeLevelFit fit, double level) {
    double half =
        ReferenceDistribution.studentT(fit.clusters() - 2.0).multiplier(level)
            * Math.sqrt(fit.totalVariance().orElseThrow() + fit.covariance(0, 0));
    return new Interval(fit.coefficient(0) - half, fit.coefficient(0) + half);
  }

  private static Optional<Interval> unknown(ClusteredRows rows, ThreeLevelFit fit, double level) {
    if (rows.size() > UnknownSpread.MOST_ROWS) {
      return Optional.empty();
    }
    double precision = 0;
    for (int row = 0; row < rows.size(); row++) {
      precision += 1 / rows.variance(row) / rows.size();
    }
    double scale = 1 / Math.sqrt(precision);
    // Where rows are alone in their clusters, only the sum of the variances has a bearing.
    Optional<UnknownSpread> spread =
        fit.told() == Told.ONLY_SUM
            ? UnknownSpread.ofOne(
                within -> at(rows, 0, within).logLikelihood(true),
                scale,
                Math.sqrt(fit.totalVariance().orElseThrow()))
            : UnknownSpread.ofTwo(
                (within, between) -> at(rows, between, within).logLikelihood(true),
                scale,
                Math.sqrt(fit.withinVariance().orElseThrow()),
                Math.sqrt(fit.betweenVariance().orElseThrow()));
    return spread.map(known -> limits(rows, known, level));
  }

  private static CovarianceFit at(ClusteredRows rows, double between, double within) {
    return new CovarianceFit(rows, between * between, within * within);
  }

  private static Interval limits(ClusteredRows rows, UnknownSpread spread, double level) {
    List<Point> points = spread.points();
    double[] means = new double[points.size()];
    double[] deviations = new double[points.size()];
    for (int p = 0; p < means.length; p++) {
      Point point = points.get(p);
      CovarianceFit fit = at(rows, point.second(), point.first());
      means[p] = fit.factor().coefficient(0);
      deviations[p] =
          Math.hypot(
              Math.sqrt(fit.factor().covariance(0, 0)), Math.hypot(point.first(), point.second()));
    }
    return spread.limits(means, deviations, level);
  }
}
