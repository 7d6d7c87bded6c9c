package gapwise.synthesis.pooling;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A pooled mean with its interval and test against 0, on the analysis scale.
 *
 * @param estimate the mean
 * @param standardError at least 0, as the interval's method has it
 * @param interval its limits
 * @param statistic what the test refers to its distribution; empty where it is 0/0 or infinite
 * @param degreesOfFreedom of Student's t; empty for the normal distribution
 * @param pValue two-sided; empty with the statistic
 */
public record PooledMean(
    double estimate,
    double standardError,
    Interval interval,
    OptionalDouble statistic,
    OptionalInt degreesOfFreedom,
    OptionalDouble pValue) {
  public PooledMean {
    if (!(Double.isFinite(estimate) && standardError >= 0)) {
      throw new IllegalArgumentException("no mean: " + estimate + " +- " + standardError);
    }
  }

  /** Estimate and multiple of its standard error, test by their ratio. */
  public static PooledMean symmetric(
      double estimate, double standardError, ReferenceDistribution reference, double level) {
    double half = reference.multiplier(level) * standardError;
    double ratio = estimate / standardError;
    boolean tested = Double.isFinite(ratio);
    return new PooledMean(
        estimate,
        standardError,
        new Interval(estimate - half, estimate + half),
        tested ? OptionalDouble.of(ratio) : OptionalDouble.empty(),
        reference.wholeDegreesOfFreedom(),
        tested ? OptionalDouble.of(reference.twoSidedP(ratio)) : OptionalDouble.empty());
  }
}
