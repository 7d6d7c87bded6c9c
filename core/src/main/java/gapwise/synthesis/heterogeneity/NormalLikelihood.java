package gapwise.synthesis.heterogeneity;

import gapwise.numeric.ScannedMaximum;
import gapwise.numeric.ScannedMaximum.Maximum;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Likelihood of tau squared with the means at their best, full or restricted: Patterson and
 * Thompson, Biometrika 1971;58:545; Hardy and Thompson, Stat Med 1996;15:619; Viechtbauer, J Educ
 * Behav Stat 2005;30:261.
 *
 * <p>The derivative is half of sum w^2 r^2 less tr P (restricted) or sum w (full). Since w is
 * between 1/(t + vmax) and 1/t, it is below 0 wherever m t^2 exceeds D (t + vmax), with m = k - p
 * or k and D the sum of squared unweighted residuals: the upper end of the search.
 */
public final class NormalLikelihood {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  private final EffectSample sample;
  private final MeanModel model;
  private final boolean restricted;

  public NormalLikelihood(EffectSample sample, MeanModel model, boolean restricted) {
    this.sample = sample;
    this.model = model;
    this.restricted = restricted;
  }

  /** Log likelihood at a tau squared, with all constants but log det(X'X)/2. */
  public double at(double tauSquared) {
    double[] weights = sample.weights(tauSquared);
    MeanModel.Fit fit = model.fit(sample, weights);
    double twice =
        terms() * LOG_TWO_PI
            + sample.sum(
                i -> weights[i] * fit.residual(i) * fit.residual(i) - Math.log(weights[i]));
    return -(restricted ? twice + fit.logDeterminant() : twice) / 2;
  }

  /** The tau squared with the highest likelihood. */
  public TauSquared.Estimate maximum() {
    OptionalDouble only = model.onlyTop(sample, restricted);
    if (only.isPresent()) {
      return new TauSquared.Estimate(only.getAsDouble(), true);
    }
    return maximum(
        this::at,
        this::slope,
        new GeneralisedQ(sample, model).unweighted(),
        terms(),
        sample.variance(sample.mostExact()),
        sample.largestVariance());
  }

  /**
   * The tau squared with the highest likelihood.
   *
   * @param value log likelihood at a tau squared
   * @param slope twice its derivative
   * @param unweighted D
   * @param terms m
   * @param smallestVariance vmin; a hundredth of it changes no weight by more than a hundredth, so
   *     that no hump is looked for below
   * @param largestVariance vmax
   */
  public static TauSquared.Estimate maximum(
      DoubleUnaryOperator value,
      DoubleUnaryOperator slope,
      double unweighted,
      double terms,
      double smallestVariance,
      double largestVariance) {
    if (unweighted == 0) {
      return new TauSquared.Estimate(0, true);
    }
    Maximum maximum =
        ScannedMaximum.find(
            value, slope, upper(unweighted, terms, largestVariance), smallestVariance / 100);
    return new TauSquared.Estimate(maximum.place(), maximum.converged());
  }

  /** Where the likelihood falls for good; a thousandth added against rounding. */
  public static double upper(double unweighted, double terms, EffectSample sample) {
    return upper(unweighted, terms, sample.largestVariance());
  }

  private static double upper(double unweighted, double terms, double largestVariance) {
    double half = unweighted / (2 * terms);
    return 1.001 * (half + Math.sqrt(half * half + 2 * half * largestVariance));
  }

  private double terms() {
    return restricted ? sample.size() - model.parameters() : sample.size();
  }

  /** Twice the derivative of the log likelihood at a tau squared. */
  double slope(double tauSquared) {
    return model.likelihoodSlope(sample, tauSquared, restricted);
  }
}
