package gapwise.synthesis.likelihood;

/**
 * Events in two groups with an intercept g a study: logit p1 = g + z1 theta, logit p2 = g + z2
 * theta, with theta the log odds ratio and z1 - z2 = 1.
 */
final class TwoArmLikelihoods extends StudyLikelihoods {
  private final BinomialLikelihoods first;
  private final BinomialLikelihoods second;
  private final HypergeometricLikelihoods given;
  private final double z1;
  private final double z2;
  private final double[] one = new double[LENGTH];
  private final double[] other = new double[LENGTH];

  /**
   * @param given the same tables, for their starting values
   * @param half whether groups are coded 1/2 and -1/2 instead of 1 and 0
   */
  TwoArmLikelihoods(
      BinomialLikelihoods first,
      BinomialLikelihoods second,
      HypergeometricLikelihoods given,
      boolean half) {
    this.first = first;
    this.second = second;
    this.given = given;
    z1 = half ? 0.5 : 1;
    z2 = z1 - 1;
  }

  @Override
  int size() {
    return first.size();
  }

  @Override
  boolean hasIntercepts() {
    return true;
  }

  @Override
  void second(int study, double theta, double intercept, double[] d) {
    first.second(study, intercept + z1 * theta, 0, one);
    second.second(study, intercept + z2 * theta, 0, other);
    together(d);
  }

  @Override
  void all(int study, double theta, double intercept, double[] d) {
    first.all(study, intercept + z1 * theta, 0, one);
    second.all(study, intercept + z2 * theta, 0, other);
    together(d);
    double third1 = one[TTT];
    double third2 = other[TTT];
    double fourth1 = one[TTTT];
    double fourth2 = other[TTTT];
    d[TTT] = z1 * z1 * z1 * third1 + z2 * z2 * z2 * third2;
    d[TTG] = z1 * z1 * third1 + z2 * z2 * third2;
    d[TGG] = z1 * third1 + z2 * third2;
    d[TTTT] = z1 * z1 * z1 * z1 * fourth1 + z2 * z2 * z2 * z2 * fourth2;
    d[TTTG] = z1 * z1 * z1 * fourth1 + z2 * z2 * z2 * fourth2;
    d[TTGG] = z1 * z1 * fourth1 + z2 * z2 * fourth2;
  }

  private void together(double[] d) {
    d[VALUE] = one[VALUE] + other[VALUE];
    d[T] = z1 * one[T] + z2 * other[T];
    d[G] = one[T] + other[T];
    d[TT] = z1 * z1 * one[TT] + z2 * z2 * other[TT];
    d[TG] = z1 * one[TT] + z2 * other[TT];
    d[GG] = one[TT] + other[TT];
  }

  @Override
  double start(int study) {
    return given.start(study);
  }

  @Override
  double startInformation(int study) {
    return given.startInformation(study);
  }

  @Override
  double startIntercept(int study) {
    return z1 * second.start(study) - z2 * first.start(study);
  }

  @Override
  Pull pull(int study) {
    return given.pull(study);
  }
}
