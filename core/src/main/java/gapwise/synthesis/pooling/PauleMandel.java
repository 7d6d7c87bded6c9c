package gapwise.synthesis.pooling;

/** The t at which Q(t) = k - p: Paule and Mandel, J Res Natl Bur Stand 1982;87:377. */
final class PauleMandel implements TauSquaredEstimator {
  @Override
  public String name() {
    return "paule-mandel";
  }

  @Override
  public TauSquared estimate(EffectSample sample, MeanModel model) {
    return new GeneralisedQ(sample, model).where(sample.size() - model.parameters());
  }
}
