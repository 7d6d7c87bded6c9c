package gapwise.synthesis.heterogeneity;

/**
 * A way of estimating the variance between studies. All are cut at 0 unless they say otherwise.
 * Each is one class, listed in {@link TauSquaredEstimators}.
 */
public interface TauSquaredEstimator {
  /** The word in a plan. */
  String name();

  /** Its name for people, which follows "by": "DerSimonian-Laird". */
  String label();

  /**
   * Estimates.
   *
   * @param sample more studies than the model has means, no variance 0
   * @param model what the means depend on
   */
  default TauSquared estimate(EffectSample sample, MeanModel model) {
    return estimate(new FittedSums(sample, model));
  }

  /**
   * Estimates from sums, however they were had.
   *
   * @param sums of more studies than the model has means, no variance 0
   */
  TauSquared estimate(ResidualSums sums);
}
