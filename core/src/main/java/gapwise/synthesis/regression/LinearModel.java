package gapwise.synthesis.regression;

import gapwise.numeric.LeastSquares;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.MeanModel;
import java.util.Optional;

/**
 * Means that are sums of the terms of a design, as the estimators of the variance between studies
 * see them: b = (X'WX)^-1 X'Wy (Berkey et al., Stat Med 1995;14:395).
 */
public final class LinearModel implements MeanModel {
  private final DesignMatrix design;
  private final double[] values;

  private LinearModel(DesignMatrix design) {
    this.design = design;
    this.values = design.values();
  }

  /**
   * The model of a design.
   *
   * @param design of full rank with at least as many rows as columns
   */
  public static LinearModel of(DesignMatrix design) {
    return new LinearModel(design);
  }

  /** What the means depend on. */
  public DesignMatrix design() {
    return design;
  }

  @Override
  public int parameters() {
    return design.columns();
  }

  @Override
  public LinearFit fit(EffectSample sample, double[] weights) {
    return new LinearFit(sample, weights.clone(), true);
  }

  /** The fit to all digits, for what is told; {@link #fit} is for searches. */
  LinearFit told(EffectSample sample, double[] weights) {
    return new LinearFit(sample, weights.clone(), false);
  }

  /** A fit with its coefficients and their variances. */
  public final class LinearFit implements Fit {
    private final double[] weights;
    private final LeastSquares squares;
    private final LeastSquares.Solution solution;
    private Optional<double[]> remainders = Optional.empty();

    private LinearFit(EffectSample sample, double[] weights, boolean inSearch) {
      this.weights = weights;
      squares = LeastSquares.of(values, design.columns(), weights);
      double[] effects = new double[sample.size()];
      for (int i = 0; i < effects.length; i++) {
        effects[i] = sample.effect(i);
      }
      solution = inSearch ? squares.solveInSearch(effects) : squares.solve(effects);
    }

    /** The coefficient of a term. */
    public double coefficient(int term) {
      return solution.coefficient(term);
    }

    /** (X'WX)^-1, the covariance of the coefficients where weights are reciprocal variances. */
    public double[][] covariance() {
      return squares.inverse();
    }

    @Override
    public double residual(int study) {
      return solution.residual(study);
    }

    @Override
    public double projection(int study) {
      if (remainders.isEmpty()) {
        remainders = Optional.of(squares.remainders());
      }
      return weights[study] * remainders.get()[study];
    }

    @Override
    public double logDeterminant() {
      return squares.logDeterminant();
    }
  }
}
