package gapwise.synthesis.network;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;

/**
 * One treatment less another.
 *
 * @param estimate on the analysis scale
 * @param standardError above 0
 */
public record Comparison(double estimate, double standardError) {
  /** Normal limits. */
  public Interval interval(double level) {
    double half = ReferenceDistribution.normal().multiplier(level) * standardError;
    return new Interval(estimate - half, estimate + half);
  }

  /** Two-sided normal p value of no difference. */
  public double pValue() {
    return ReferenceDistribution.normal().twoSidedP(estimate / standardError);
  }

  /** The same seen from the other side. */
  public Comparison reversed() {
    return new Comparison(-estimate, standardError);
  }

  /** The difference of two independent comparisons. */
  Comparison less(Comparison other) {
    return new Comparison(
        estimate - other.estimate, Math.hypot(standardError, other.standardError));
  }
}
