package gapwise.synthesis.smallstudy;

import gapwise.numeric.TermSum;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.MeanModel;
import java.util.Arrays;

/** Means on a straight line over a number of each study. */
final class LineMeans implements MeanModel {
  /** A spread below this share of the size, squared, is rounding. */
  private static final double ROUNDING = 1e-24;

  private final double[] x;

  LineMeans(double[] x) {
    this.x = x.clone();
  }

  /** Whether all numbers are equal to rounding, so that there is no line. */
  boolean isFlat() {
    double mean = TermSum.of(x.length, i -> x[i]) / x.length;
    double spread = TermSum.of(x.length, i -> (x[i] - mean) * (x[i] - mean));
    return !(spread > ROUNDING * x.length * mean * mean);
  }

  @Override
  public int parameters() {
    return 2;
  }

  @Override
  public LineFit fit(EffectSample sample, double[] weights) {
    return new LineFit(sample, weights);
  }

  /** The fit with its line. */
  final class LineFit implements Fit {
    private final LeastSquaresLine line;
    private final double[] weights;

    private LineFit(EffectSample sample, double[] weights) {
      double[] effects = new double[sample.size()];
      Arrays.setAll(effects, sample::effect);
      this.line = new LeastSquaresLine(x, effects, weights);
      this.weights = weights.clone();
    }

    /** Change of the mean per unit. */
    double slope() {
      return line.slope();
    }

    /** Standard error of the slope from the weights. */
    double slopeError() {
      return 1 / Math.sqrt(line.spread());
    }

    /** The mean at 0. */
    double limit() {
      return line.intercept();
    }

    @Override
    public double residual(int study) {
      return line.residual(study);
    }

    @Override
    public double projection(int study) {
      double fromMean = x[study] - line.meanX();
      double share = weights[study] * (1 / line.weightSum() + fromMean * fromMean / line.spread());
      return weights[study] * Math.max(0, 1 - share);
    }

    @Override
    public double logDeterminant() {
      return Math.log(line.weightSum()) + Math.log(line.spread());
    }
  }
}
