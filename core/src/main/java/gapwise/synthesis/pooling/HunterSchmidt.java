package gapwise.synthesis.pooling;

/** (Q - k) / sum(1/v): Viechtbauer, J Educ Behav Stat 2005;30:261, equation 8. */
final class HunterSchmidt implements TauSquaredEstimator {
  @Override
  public String name() {
    return "hunter-schmidt";
  }

  @Override
  public TauSquared estimate(EffectSample sample, MeanModel model) {
    double q = new GeneralisedQ(sample, model).at(0);
    return TauSquared.cut((q - sample.size()) / sample.sum(i -> 1 / sample.variance(i)));
  }
}
