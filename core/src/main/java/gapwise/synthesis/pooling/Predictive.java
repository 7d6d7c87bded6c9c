package gapwise.synthesis.pooling;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import java.util.Objects;

/**
 * Where the true effect of a further study is expected, on the analysis scale: Higgins, Thompson
 * and Spiegelhalter, J R Stat Soc A 2009;172:137.
 *
 * @param centre the pooled or predicted mean
 * @param scale root(tau^2 + se^2), at least 0
 * @param reference its shape
 */
public record Predictive(double centre, double scale, ReferenceDistribution reference) {
  public Predictive {
    Objects.requireNonNull(reference, "reference");
    if (!Double.isFinite(centre) || !(scale >= 0)) {
      throw new IllegalArgumentException("no distribution: " + centre + " +- " + scale);
    }
  }

  /** The limits that hold a share of it, half of the rest on each side. */
  public Interval interval(double level) {
    double half = reference.multiplier(level) * scale;
    return new Interval(centre - half, centre + half);
  }

  /** The share of further studies, from 0 to 1, whose true effect is expected below a value. */
  public double below(double value) {
    if (scale == 0) {
      return value > centre ? 1 : value < centre ? 0 : 0.5;
    }
    return reference.below((value - centre) / scale);
  }
}
