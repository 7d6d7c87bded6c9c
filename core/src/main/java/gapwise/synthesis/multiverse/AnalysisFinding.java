package gapwise.synthesis.multiverse;

import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.synthesis.pooling.PooledMean;
import java.util.OptionalDouble;

/** What one analysis found. */
public sealed interface AnalysisFinding {
  /** Limits nearer to each other than this share of what they are limits of have no width. */
  double ROUNDING = 1e-12;

  /**
   * A pooled value, on the analysis scale and as people read it.
   *
   * @param studies how many were pooled
   * @param pValue of the test against 0 on the analysis scale; empty where there is none
   */
  record Estimated(
      double estimate,
      double lower,
      double upper,
      double shownEstimate,
      double shownLower,
      double shownUpper,
      int studies,
      OptionalDouble pValue)
      implements AnalysisFinding {}

  /**
   * No pooled value that could be weighed beside others.
   *
   * @param code why, a kebab-case word
   */
  record NotEstimated(String code) implements AnalysisFinding {}

  /**
   * A pooled mean as a finding. An interval without width is certainty that no patients gave, so it
   * counts as no finding: to one side of a threshold it would weigh like real ones.
   */
  static AnalysisFinding of(PooledMean mean, BackTransform back, int studies) {
    Interval limits = mean.interval();
    double shownLower = back.apply(limits.lower());
    double shownUpper = back.apply(limits.upper());
    return hasWidth(limits.lower(), limits.upper()) && hasWidth(shownLower, shownUpper)
        ? new Estimated(
            mean.estimate(),
            limits.lower(),
            limits.upper(),
            back.apply(mean.estimate()),
            shownLower,
            shownUpper,
            studies,
            mean.pValue())
        : new NotEstimated("zero-width-interval");
  }

  private static boolean hasWidth(double lower, double upper) {
    return upper - lower > ROUNDING * Math.max(Math.abs(lower), Math.abs(upper));
  }
}
