package gapwise.synthesis.heterogeneity;

/**
 * The sums of {@link MeanModel} for one mean of all studies, without an array in the loops: this is
 * where nearly all the time of pooling goes. Effects are taken from that of the most exact study,
 * and tr P = sum w - sum w^2 / sum w as twice the sum of w_i w_j over pairs, over sum w, so that
 * one study with nearly all the weight costs no digits.
 */
public final class OneMeanSums {
  private OneMeanSums() {}

  /**
   * A weighted mean.
   *
   * @param from effect of the most exact study
   * @param shift the mean less that effect
   * @param weightSum of the studies
   */
  public record Mean(double from, double shift, double weightSum) {
    public double value() {
      return from + shift;
    }
  }

  /** The mean with weights 1/(v + t). */
  public static Mean mean(EffectSample sample, double tauSquared) {
    double from = sample.effect(sample.mostExact());
    double weights = 0;
    double weighted = 0;
    for (int i = 0; i < sample.size(); i++) {
      double weight = 1 / (sample.variance(i) + tauSquared);
      weights += weight;
      weighted += weight * (sample.effect(i) - from);
    }
    return new Mean(from, weighted / weights, weights);
  }

  /** Q(t): squared residuals weighted by 1/(v + t). */
  public static double squares(EffectSample sample, double tauSquared) {
    return squares(sample, tauSquared, mean(sample, tauSquared));
  }

  /** The same about a mean that is known. */
  public static double squares(EffectSample sample, double tauSquared, Mean mean) {
    double squares = 0;
    for (int i = 0; i < sample.size(); i++) {
      double residual = sample.effect(i) - mean.from() - mean.shift();
      squares += residual * residual / (sample.variance(i) + tauSquared);
    }
    return squares;
  }

  /** Twice the slope of the log likelihood: sum w^2 r^2 less tr P (restricted) or sum w. */
  static double likelihoodSlope(EffectSample sample, double tauSquared, boolean restricted) {
    double from = sample.effect(sample.mostExact());
    double weights = 0;
    double weighted = 0;
    double pairs = 0;
    for (int i = 0; i < sample.size(); i++) {
      double weight = 1 / (sample.variance(i) + tauSquared);
      pairs += weight * weights;
      weights += weight;
      weighted += weight * (sample.effect(i) - from);
    }
    double shift = weighted / weights;
    double squares = 0;
    for (int i = 0; i < sample.size(); i++) {
      double pull = (sample.effect(i) - from - shift) / (sample.variance(i) + tauSquared);
      squares += pull * pull;
    }
    return squares - (restricted ? 2 * pairs / weights : weights);
  }
}
