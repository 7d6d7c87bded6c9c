package gapwise.synthesis.multilevel;

import gapwise.effect.Interval;
import gapwise.numeric.BracketedRoot;
import gapwise.numeric.ReferenceDistribution;
import gapwise.numeric.ScannedMaximum;
import gapwise.synthesis.multilevel.ThreeLevelFit.Told;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * Limits of the variances between and within clusters and of the shares they have in a typical
 * row's whole variance: the values whose likelihood, with the other variance at its best for each,
 * lies no farther below the top than half the point of chi-squared on one degree of freedom (Hardy
 * and Thompson, Stat Med 1996;15:619, for one variance). The likelihood is the one that estimated
 * the variances, restricted or full. A share is held itself, both variances being free beside it,
 * so that its limits are not those of a variance with the other one held.
 *
 * @param between of the variance between clusters
 * @param within of the variance within them
 * @param shareBetween of the former over the sum of both and the typical variance within studies,
 *     from 0 to 1
 * @param shareWithin of the latter over the same
 */
public record VarianceLimits(
    Optional<Interval> between,
    Optional<Interval> within,
    Optional<Interval> shareBetween,
    Optional<Interval> shareWithin) {
  /** With more rows some thousand evaluations of the likelihood take too long. */
  public static final int MOST_ROWS = 5000;

  /** So often is a step away from the top doubled: to variances 1e18 times as large. */
  private static final int MOST_DOUBLINGS = 60;

  /** Part of the smallest sampling variance below which the other variance changes nothing. */
  private static final double NEGLIGIBLE = 1e-3;

  /**
   * The limits; each empty where it cannot be told, or where the likelihood never falls so far.
   *
   * @param level above 0 and below 1
   */
  static VarianceLimits of(
      ClusteredRows rows, ThreeLevelFit fit, double typical, double range, double level) {
    double multiplier = ReferenceDistribution.normal().multiplier(level);
    Profile profile = new Profile(rows, fit.restricted(), range);
    double floor = fit.logLikelihood() - multiplier * multiplier / 2;
    double smallest = profile.smallest();
    double between = fit.betweenVariance().orElse(0);
    double within = fit.withinVariance().orElse(0);
    if (fit.told() != Told.APART) {
      return new VarianceLimits(
          Optional.empty(),
          limits(value -> profile.alone(value) - floor, within, smallest),
          Optional.empty(),
          Optional.empty());
    }
    return new VarianceLimits(
        limits(value -> profile.best(new Line(value, 0, 0, 1), within) - floor, between, smallest),
        limits(value -> profile.best(new Line(0, 1, value, 0), between) - floor, within, smallest),
        limits(
                odds -> profile.best(new Line(odds * typical, odds, 0, 1), within) - floor,
                between / (within + typical),
                smallest / typical)
            .map(VarianceLimits::shares),
        limits(
                odds -> profile.best(new Line(0, 1, odds * typical, odds), between) - floor,
                within / (between + typical),
                smallest / typical)
            .map(VarianceLimits::shares));
  }

  /** Whether every variance and share that a fit tells has limits. */
  public boolean isWhole(ThreeLevelFit fit) {
    return between.isPresent() == fit.betweenVariance().isPresent()
        && within.isPresent() == fit.withinVariance().isPresent()
        && shareBetween.isPresent() == fit.iSquaredBetween().isPresent()
        && shareWithin.isPresent() == fit.iSquaredWithin().isPresent();
  }

  private static Interval shares(Interval odds) {
    return new Interval(odds.lower() / (1 + odds.lower()), odds.upper() / (1 + odds.upper()));
  }

  /**
   * Where a height falls to 0 on both sides of a value.
   *
   * @param best at least 0
   * @param step first step away, above 0
   */
  private static Optional<Interval> limits(DoubleUnaryOperator height, double best, double step) {
    try {
      return bracketed(height, best, step);
    } catch (DependentColumnsException lost) {
      // A mean is lost in rounding beside variances that are larger by dozens of powers of ten.
      return Optional.empty();
    }
  }

  private static Optional<Interval> bracketed(
      DoubleUnaryOperator height, double best, double step) {
    if (!(height.applyAsDouble(best) > 0)) {
      return Optional.empty();
    }
    double lower =
        best == 0 || height.applyAsDouble(0) >= 0 ? 0 : BracketedRoot.find(height, 0, best).value();
    double near = best;
    double reach = Math.max(best, step);
    for (int i = 0; i < MOST_DOUBLINGS; i++, reach *= 2) {
      double at = height.applyAsDouble(best + reach);
      if (at <= 0) {
        return Optional.of(
            new Interval(lower, BracketedRoot.find(height, near, best + reach).value()));
      }
      near = best + reach;
    }
    return Optional.empty();
  }

  /**
   * Pairs of variances along which one number is free: between + f slope, within + f slope.
   *
   * @param between where f is 0
   * @param betweenSlope at least 0
   * @param within where f is 0
   * @param withinSlope at least 0
   */
  private record Line(double between, double betweenSlope, double within, double withinSlope) {
    CovarianceFit at(ClusteredRows rows, double free) {
      return new CovarianceFit(rows, between + free * betweenSlope, within + free * withinSlope);
    }
  }

  /** The likelihood with what is free at its best. */
  private record Profile(ClusteredRows rows, boolean restricted, double range) {
    double smallest() {
      double smallest = Double.POSITIVE_INFINITY;
      for (int row = 0; row < rows.size(); row++) {
        smallest = Math.min(smallest, rows.variance(row));
      }
      return smallest;
    }

    double alone(double within) {
      return new CovarianceFit(rows, 0, within).logLikelihood(restricted);
    }

    /**
     * The highest likelihood along a line.
     *
     * @param near what is free at the top of all, which a scan of variances of many sizes may miss
     */
    double best(Line line, double near) {
      DoubleUnaryOperator value = free -> line.at(rows, free).logLikelihood(restricted);
      DoubleUnaryOperator slope =
          free -> {
            CovarianceFit.Slope by = line.at(rows, free).slope(restricted);
            return line.betweenSlope() * by.byBetween() + line.withinSlope() * by.byWithin();
          };
      double upper = Math.max(range, smallest());
      for (int i = 0; i < MOST_DOUBLINGS && slope.applyAsDouble(upper) > 0; i++) {
        upper *= 2;
      }
      double place =
          slope.applyAsDouble(upper) > 0
              ? upper
              : ScannedMaximum.find(value, slope, upper, NEGLIGIBLE * smallest()).place();
      return Math.max(value.applyAsDouble(place), value.applyAsDouble(near));
    }
  }
}
