package gapwise.synthesis.heterogeneity;

/**
 * The moment estimate for any fixed weights w: Q has expectation tr(P V) + tau^2 tr(P) (DerSimonian
 * and Kacker, Contemp Clin Trials 2007;28:105, equations 6 and 7).
 */
final class MomentEstimate {
  private MomentEstimate() {}

  /** Before any cut at 0. */
  static double of(EffectSample sample, MeanModel model, double[] weights) {
    MeanModel.Fit fit = model.fit(sample, weights);
    double q = sample.sum(i -> weights[i] * fit.residual(i) * fit.residual(i));
    double within = sample.sum(i -> fit.projection(i) * sample.variance(i));
    return (q - within) / sample.sum(fit::projection);
  }
}
