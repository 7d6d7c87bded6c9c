package gapwise.synthesis.heterogeneity;

import java.util.Optional;

/** The likelihood of tau squared for one mean of all studies of a sample, in single passes. */
final class OneMeanLikelihood implements OneHump.Likelihood {
  /** Share of the squares about one effect that must be left about the mean. */
  private static final double LEAST_SHARE = 1e-7;

  private final EffectSample sample;
  private final boolean restricted;
  private final double unweightedSquares;
  private final double unweightedMoment;

  OneMeanLikelihood(EffectSample sample, boolean restricted) {
    this.sample = sample;
    this.restricted = restricted;
    int k = sample.size();
    double centre = sample.effect(sample.mostExact());
    double effects = 0;
    double squares = 0;
    double variances = 0;
    for (int i = 0; i < k; i++) {
      double effect = sample.effect(i) - centre;
      effects += effect;
      squares += effect * effect;
      variances += sample.variance(i);
    }
    double residual = squares - effects * effects / k;
    this.unweightedSquares = residual > LEAST_SHARE * squares ? residual : 0;
    this.unweightedMoment = residual / (k - 1) - variances / k;
  }

  @Override
  public double unweightedSquares() {
    return unweightedSquares;
  }

  @Override
  public double unweightedMomentEstimate() {
    return unweightedMoment;
  }

  @Override
  public double smallestVariance() {
    return sample.variance(sample.mostExact());
  }

  @Override
  public Optional<SlopeParts> partsAt(double tauSquared) {
    double centre = sample.effect(sample.mostExact());
    double w = 0;
    double we = 0;
    double ww = 0;
    double wwe = 0;
    double wwee = 0;
    double www = 0;
    double wwwe = 0;
    double wwwee = 0;
    for (int i = 0; i < sample.size(); i++) {
      double weight = 1 / (sample.variance(i) + tauSquared);
      double effect = sample.effect(i) - centre;
      double pull = weight * effect;
      double square = weight * weight;
      w += weight;
      we += pull;
      ww += square;
      wwe += weight * pull;
      wwee += pull * pull;
      www += weight * square;
      wwwe += square * pull;
      wwwee += weight * (pull * pull);
    }
    return new SlopeParts.Sums(w, we, ww, wwe, wwee, www, wwwe, wwwee)
        .parts(tauSquared, restricted);
  }

  @Override
  public double bAtZero() {
    double w = 0;
    double ww = 0;
    for (int i = 0; i < sample.size(); i++) {
      double weight = 1 / sample.variance(i);
      w += weight;
      ww += weight * weight;
    }
    double fall = restricted ? w - ww / w : w;
    return fall > LEAST_SHARE * w ? 1 / fall : 0;
  }

  @Override
  public double slopeAt(double tauSquared) {
    return OneMeanSums.likelihoodSlope(sample, tauSquared, restricted);
  }
}
