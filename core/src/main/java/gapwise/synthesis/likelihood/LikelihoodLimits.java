package gapwise.synthesis.likelihood;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.Prediction;
import java.util.Optional;

/**
 * The limits about the top of a likelihood: estimate and multiple of its standard error.
 *
 * @param level above 0 and below 1
 * @param studentT whether the multiple is that of Student's t on k - 1 instead of the normal one,
 *     to allow for a spread between studies that few studies tell badly (no source: chosen by
 *     simulation, docs/methods/coverage.md)
 * @param prediction whose multiple for a further study; empty where none is asked for
 */
public record LikelihoodLimits(
    double level, boolean studentT, Optional<Prediction.Reference> prediction) {
  public LikelihoodLimits {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("level must be between 0 and 1, was " + level);
    }
  }

  /** Whether a further study is asked for with tau not taken as known. */
  boolean isSpreadUnknown() {
    return prediction.filter(one -> !one.takesSpreadAsKnown()).isPresent();
  }

  /** The same without a further study. */
  public LikelihoodLimits withoutPrediction() {
    return new LikelihoodLimits(level, studentT, Optional.empty());
  }

  /** Normal limits and no prediction. */
  public static LikelihoodLimits normal(double level) {
    return new LikelihoodLimits(level, false, Optional.empty());
  }

  /** The mean of several studies with its limits. */
  PooledMean mean(LikelihoodFit.Estimate top, int studies) {
    return mean(top.estimate(), top.standardError(), studies);
  }

  /** The same of an estimate and its standard error. */
  PooledMean mean(double estimate, double standardError, int studies) {
    return PooledMean.symmetric(
        estimate,
        standardError,
        studentT ? ReferenceDistribution.studentT(studies - 1) : ReferenceDistribution.normal(),
        level);
  }

  /**
   * Where the true value of a further study lies, mean +- multiple root(tau^2 + se^2): Higgins,
   * Thompson and Spiegelhalter, J R Stat Soc A 2009;172:137. Empty without degrees of freedom, and
   * where tau is not taken as known.
   */
  Optional<Interval> further(LikelihoodFit.Estimate top, int studies) {
    return prediction
        .flatMap(reference -> reference.distribution(studies - 1))
        .map(
            distribution -> {
              double half =
                  distribution.multiplier(level) * Math.hypot(top.tau(), top.standardError());
              return new Interval(top.estimate() - half, top.estimate() + half);
            });
  }
}
