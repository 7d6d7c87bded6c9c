package gapwise.synthesis.regression;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;

/**
 * A coefficient with a standard error that allows for clusters.
 *
 * @param term its column in the design
 * @param standardError above 0
 * @param degreesOfFreedom of Student's t, above 0, not always whole
 * @param interval its limits
 * @param statistic estimate over standard error
 * @param pValue two-sided
 */
public record RobustCoefficient(
    String term,
    double estimate,
    double standardError,
    double degreesOfFreedom,
    Interval interval,
    double statistic,
    double pValue) {

  static RobustCoefficient of(
      String term, double estimate, double standardError, double degrees, double level) {
    ReferenceDistribution reference = ReferenceDistribution.studentT(degrees);
    double half = reference.multiplier(level) * standardError;
    double statistic = estimate / standardError;
    return new RobustCoefficient(
        term,
        estimate,
        standardError,
        degrees,
        new Interval(estimate - half, estimate + half),
        statistic,
        reference.twoSidedP(statistic));
  }
}
