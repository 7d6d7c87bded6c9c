package gapwise.synthesis.heterogeneity;

import gapwise.numeric.BracketedRoot;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Q(t), the sum of squared residuals weighted by 1/(v + t), which falls as t grows. Because every
 * weight is below 1/t, Q(t) is below D/t, where D is the sum of squared unweighted residuals: this
 * gives the upper end of a bracket for any value Q is to take.
 */
public final class GeneralisedQ {
  private final EffectSample sample;
  private final MeanModel model;
  private final double unweighted;

  public GeneralisedQ(EffectSample sample, MeanModel model) {
    this.sample = sample;
    this.model = model;
    double[] ones = new double[sample.size()];
    Arrays.fill(ones, 1);
    MeanModel.Fit fit = model.fit(sample, ones);
    this.unweighted = sample.sum(i -> fit.residual(i) * fit.residual(i));
  }

  /** D, the sum of squared unweighted residuals. */
  double unweighted() {
    return unweighted;
  }

  /** Q at a tau squared. */
  public double at(double tauSquared) {
    return model.squares(sample, tauSquared);
  }

  /** The sum of squared residuals of a fit with its weights. */
  public double weighted(MeanModel.Fit fit, double[] weights) {
    return sample.sum(i -> weights[i] * fit.residual(i) * fit.residual(i));
  }

  /**
   * The tau squared at which Q takes a value; 0 if it is below the value already at 0.
   *
   * @param value above 0
   */
  TauSquared.Estimate where(double value) {
    return where(this::at, unweighted, value);
  }

  /** The same for any Q(t) with its D. */
  static TauSquared.Estimate where(DoubleUnaryOperator at, double unweighted, double value) {
    if (at.applyAsDouble(0) <= value) {
      return new TauSquared.Estimate(0, true);
    }
    // A thousandth more than the bound, so that rounding at the end cannot undo the bracket.
    double upper = 1.001 * unweighted / value;
    // One study of huge variance puts the bound, and not the root, many powers of ten up.
    BracketedRoot.Root root =
        BracketedRoot.findHoweverSmall(t -> at.applyAsDouble(t) - value, 0, upper);
    return new TauSquared.Estimate(root.value(), root.converged());
  }
}
