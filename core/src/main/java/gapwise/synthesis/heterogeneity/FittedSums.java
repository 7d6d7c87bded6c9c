package gapwise.synthesis.heterogeneity;

import java.util.Arrays;

/** Sums of a sample from a weighted least-squares fit at each tau squared. */
final class FittedSums implements ResidualSums {
  private final EffectSample sample;
  private final MeanModel model;

  FittedSums(EffectSample sample, MeanModel model) {
    this.sample = sample;
    this.model = model;
  }

  @Override
  public int size() {
    return sample.size();
  }

  @Override
  public int parameters() {
    return model.parameters();
  }

  @Override
  public double squaresAt(double tauSquared) {
    return model.squares(sample, tauSquared);
  }

  @Override
  public double unweightedSquares() {
    return new GeneralisedQ(sample, model).unweighted();
  }

  @Override
  public double momentEstimateAt(double tauSquared) {
    return MomentEstimate.of(sample, model, sample.weights(tauSquared));
  }

  @Override
  public double unweightedMomentEstimate() {
    double[] ones = new double[sample.size()];
    Arrays.fill(ones, 1);
    return MomentEstimate.of(sample, model, ones);
  }

  @Override
  public double inverseVariances() {
    return sample.sum(i -> 1 / sample.variance(i));
  }

  @Override
  public double smallestVariance() {
    return sample.variance(sample.mostExact());
  }

  @Override
  public double largestVariance() {
    return sample.largestVariance();
  }

  @Override
  public double largestEffect() {
    double largest = 0;
    for (int i = 0; i < sample.size(); i++) {
      largest = Math.max(largest, Math.abs(sample.effect(i)));
    }
    return largest;
  }

  @Override
  public TauSquared.Estimate highestLikelihood(boolean restricted) {
    return new NormalLikelihood(sample, model, restricted).maximum();
  }

  @Override
  public double logLikelihoodAt(double tauSquared, boolean restricted) {
    return new NormalLikelihood(sample, model, restricted).at(tauSquared);
  }

  @Override
  public double likelihoodSlopeAt(double tauSquared, boolean restricted) {
    return model.likelihoodSlope(sample, tauSquared, restricted);
  }
}
