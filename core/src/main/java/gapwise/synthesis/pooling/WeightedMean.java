package gapwise.synthesis.pooling;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.MeanModel;
import gapwise.synthesis.heterogeneity.OneMeanSums;

/**
 * What an interval for the mean starts from.
 *
 * @param sample the studies the model was fitted to
 * @param model what their means depend on
 * @param estimate the weighted mean asked for
 * @param weightSum reciprocal of the squared standard error of the mean
 * @param scale the Hartung-Knapp factor q: the weighted mean square of the residuals over k - p
 * @param residualDegreesOfFreedom k - p of the studies that entered, at least 1 where a scale
 *     exists
 */
public record WeightedMean(
    EffectSample sample,
    MeanModel model,
    double estimate,
    double weightSum,
    double scale,
    int residualDegreesOfFreedom) {

  /** Of all studies of the sample. */
  public WeightedMean(
      EffectSample sample, MeanModel model, double estimate, double weightSum, double scale) {
    this(sample, model, estimate, weightSum, scale, sample.size() - model.parameters());
  }

  /**
   * The mean of all studies with weights 1/(variance + tau squared).
   *
   * @param sample at least two studies, for which {@link InverseVariance#obstacle} is empty
   * @param tauSquared at least 0
   */
  public static WeightedMean of(EffectSample sample, double tauSquared) {
    GroupMeans model = GroupMeans.one(sample);
    OneMeanSums.Mean mean = OneMeanSums.mean(sample, tauSquared);
    double squares = OneMeanSums.squares(sample, tauSquared, mean);
    return new WeightedMean(
        sample, model, mean.value(), mean.weightSum(), squares / (sample.size() - 1));
  }

  /** Standard error from the sum of weights. */
  public double standardError() {
    return 1 / Math.sqrt(weightSum);
  }

  /** Standard error times the root of q. */
  public double hartungKnappStandardError() {
    return standardError() * Math.sqrt(scale);
  }
}
