package gapwise.decision.weighing;

import gapwise.numeric.ReferenceDistribution;
import java.util.Arrays;

/**
 * An uncertain difference held against one that matters. What a threshold is, is decided before the
 * difference is looked at.
 */
public sealed interface Difference permits Difference.Drawn, Difference.Summary {
  /** The chance that the difference is greater than a number. */
  double above(double threshold);

  /** The chance that the difference is less than a number. */
  double below(double threshold);

  /**
   * The number at which "more likely than not greater" turns into "more likely than not less": the
   * difference is as likely above as below it.
   */
  double flips();

  /**
   * The chance that the difference lies no farther from 0 than a number.
   *
   * @param threshold 0 or more
   */
  default double within(double threshold) {
    if (!(threshold >= 0)) {
      throw new IllegalArgumentException("a distance from 0 must be 0 or more, was " + threshold);
    }
    return Math.max(0, 1 - above(threshold) - below(-threshold));
  }

  /** A difference of which draws are at hand, as from a posterior. */
  final class Drawn implements Difference {
    private final double[] rising;

    private Drawn(double[] rising) {
      this.rising = rising;
    }

    /**
     * Holds draws.
     *
     * @param draws at least one, all finite
     */
    public static Drawn of(double[] draws) {
      if (draws.length == 0 || !Arrays.stream(draws).allMatch(Double::isFinite)) {
        throw new IllegalArgumentException("a difference needs draws, all of them finite");
      }
      double[] rising = draws.clone();
      Arrays.sort(rising);
      return new Drawn(rising);
    }

    @Override
    public double above(double threshold) {
      return share(Arrays.stream(rising).filter(d -> d > threshold).count());
    }

    @Override
    public double below(double threshold) {
      return share(Arrays.stream(rising).filter(d -> d < threshold).count());
    }

    @Override
    public double flips() {
      int n = rising.length;
      return n % 2 == 1 ? rising[n / 2] : (rising[n / 2 - 1] + rising[n / 2]) / 2;
    }

    private double share(long count) {
      return (double) count / rising.length;
    }
  }

  /**
   * A difference told by an estimate and its standard error.
   *
   * @param estimate finite
   * @param standardError above 0
   * @param law of the distance from the estimate over the standard error
   */
  record Summary(double estimate, double standardError, ReferenceDistribution law)
      implements Difference {
    /** Width of a 95 % interval of a normal value in standard errors. */
    private static final double NORMAL_WIDTH = 2 * ReferenceDistribution.normal().multiplier(0.95);

    public Summary {
      if (!(Double.isFinite(estimate) && standardError > 0 && Double.isFinite(standardError))) {
        throw new IllegalArgumentException(
            "no difference: " + estimate + " with standard error " + standardError);
      }
    }

    /**
     * From an estimate and its 95 % limits on a scale on which they lie alike to both sides: the
     * standard error is their distance over 3.919928.
     */
    public static Summary ofLimits(double estimate, double lower, double upper) {
      return new Summary(estimate, (upper - lower) / NORMAL_WIDTH, ReferenceDistribution.normal());
    }

    /** The same with Student's t. */
    public Summary withDegreesOfFreedom(double degrees) {
      return new Summary(estimate, standardError, ReferenceDistribution.studentT(degrees));
    }

    /**
     * The true difference in one further centre: centres differ by a standard deviation of {@code
     * tau}, so its standard error is root(tau^2 + se^2).
     *
     * @param tau 0 or more
     */
    public Summary inFurtherCentre(double tau) {
      return new Summary(estimate, Math.hypot(tau, standardError), law);
    }

    @Override
    public double above(double threshold) {
      // The law is symmetric about 0, so that small chances above keep their digits.
      return law.below((estimate - threshold) / standardError);
    }

    @Override
    public double below(double threshold) {
      return law.below((threshold - estimate) / standardError);
    }

    @Override
    public double flips() {
      return estimate;
    }
  }
}
