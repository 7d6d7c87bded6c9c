package gapwise.synthesis.bayes;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;

/**
 * The posterior density of tau, with the mean integrated out in closed form: y ~ N(mean, v + tau^2)
 * gives prod w^1/2 (sum w + p)^-1/2 exp(-1/2 [sum w (y - m)^2 + p (m - c)^2]) times the prior of
 * tau, where w = 1/(v + tau^2), the prior of the mean has centre c and precision p, and m = (sum w
 * y + p c)/(sum w + p). Given tau, the mean is normal about m with variance 1/(sum w + p) (Gelman
 * and others, Bayesian Data Analysis, section 5.4).
 *
 * <p>Effects are held as distances from the one with the least variance, so that effects far from 0
 * and near each other keep their digits, and so does the residual of a study with next to no
 * variance, which would else be the rounding of the mean over a standard error smaller than that.
 * Where the prior of the mean says more than any study, its centre takes that part.
 */
final class TauDensity {
  private static final double SMALL_PRODUCT = 1e-100;

  private static final double LARGE_PRODUCT = 1e100;

  private final double[] distances;
  private final double[] variances;
  private final double origin;
  private final double leastVariance;
  private final Priors priors;
  private final double centre;

  TauDensity(EffectSample sample, Priors priors) {
    this.priors = priors;
    int sharpest = 0;
    for (int i = 1; i < sample.size(); i++) {
      sharpest = sample.variance(i) < sample.variance(sharpest) ? i : sharpest;
    }
    this.leastVariance = sample.variance(sharpest);
    this.origin = sample.effect(sharpest);
    this.centre = priors.mean().centre() - origin;
    distances = new double[sample.size()];
    variances = new double[sample.size()];
    for (int i = 0; i < distances.length; i++) {
      distances[i] = sample.effect(i) - origin;
      variances[i] = sample.variance(i);
    }
  }

  /**
   * What holds at one tau.
   *
   * @param logDensity of tau, up to a constant
   * @param mean of the mean given tau, from {@link #origin()}
   * @param sd of the mean given tau
   */
  record At(double logDensity, double mean, double sd) {}

  At at(double tau) {
    Work.check();
    double square = tau * tau;
    double precision = priors.mean().precision();
    double from = precision > 1 / (leastVariance + square) ? centre : 0;
    double sum = 0;
    double weighted = 0;
    double product = 1;
    double logs = 0;
    for (int i = 0; i < distances.length; i++) {
      double w = 1 / (variances[i] + square);
      sum += w;
      weighted += w * (distances[i] - from);
      product *= w;
      if (product < SMALL_PRODUCT || product > LARGE_PRODUCT) {
        logs += Math.log(product);
        product = 1;
      }
    }
    logs += Math.log(product);
    double total = sum + precision;
    double mean = (weighted + precision * (centre - from)) / total;
    double offPrior = centre - from - mean;
    double squares = precision * offPrior * offPrior;
    for (int i = 0; i < distances.length; i++) {
      double off = distances[i] - from - mean;
      squares += off * off / (variances[i] + square);
    }
    double logDensity = priors.tau().logDensity(tau) + (logs - Math.log(total) - squares) / 2;
    return new At(logDensity, from + mean, 1 / Math.sqrt(total));
  }

  /** What means are told from. */
  double origin() {
    return origin;
  }

  int size() {
    return distances.length;
  }

  double distance(int study) {
    return distances[study];
  }

  double variance(int study) {
    return variances[study];
  }

  Priors priors() {
    return priors;
  }

  /** Logarithm of the smallest tau about which the density changes its course. */
  double lowest() {
    double least = priors.tau().turningPoint().orElse(Double.POSITIVE_INFINITY);
    for (double variance : variances) {
      least = Math.min(least, Math.sqrt(variance));
    }
    return Math.log(least);
  }

  /** Logarithm of the largest tau about which the density changes its course. */
  double highest() {
    double most = priors.tau().turningPoint().orElse(0);
    for (int i = 0; i < variances.length; i++) {
      most = Math.max(most, Math.max(Math.sqrt(variances[i]), Math.abs(distances[i])));
    }
    if (!priors.mean().isFlat()) {
      most = Math.max(most, Math.abs(centre) + 1 / Math.sqrt(priors.mean().precision()));
    }
    return Math.log(most);
  }
}
