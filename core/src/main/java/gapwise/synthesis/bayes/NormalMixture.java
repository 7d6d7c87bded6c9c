package gapwise.synthesis.bayes;

import gapwise.numeric.BracketedRoot;
import gapwise.numeric.CompensatedSum;
import org.apache.commons.numbers.gamma.Erfc;

/** A mixture of normal distributions. */
final class NormalMixture implements Continuous {
  private static final double ROOT_TWO = Math.sqrt(2);

  private final double[] shares;
  private final double[] means;
  private final double[] deviations;
  private final int heaviest;

  /**
   * A mixture.
   *
   * @param shares sum to 1
   * @param means as many
   * @param deviations standard deviations, as many, above 0
   */
  NormalMixture(double[] shares, double[] means, double[] deviations) {
    this.shares = shares.clone();
    this.means = means.clone();
    this.deviations = deviations.clone();
    int most = 0;
    for (int i = 1; i < shares.length; i++) {
      most = shares[i] > shares[most] ? i : most;
    }
    this.heaviest = most;
  }

  double mean() {
    return CompensatedSum.over(shares.length, i -> shares[i] * means[i]);
  }

  double standardDeviation() {
    double mean = mean();
    return Math.sqrt(
        CompensatedSum.over(
            shares.length,
            i -> {
              double off = means[i] - mean;
              return shares[i] * (deviations[i] * deviations[i] + off * off);
            }));
  }

  @Override
  public double below(double x) {
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += shares[i] * Erfc.value((means[i] - x) / (deviations[i] * ROOT_TWO));
    }
    return Math.min(1, sum / 2);
  }

  @Override
  public double above(double x) {
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += shares[i] * Erfc.value((x - means[i]) / (deviations[i] * ROOT_TWO));
    }
    return Math.min(1, sum / 2);
  }

  @Override
  public double logDensity(double x) {
    double top = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < shares.length; i++) {
      top = Math.max(top, logTerm(i, x));
    }
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += Math.exp(logTerm(i, x) - top);
    }
    return top + Math.log(sum);
  }

  private double logTerm(int i, double x) {
    double z = (x - means[i]) / deviations[i];
    return Math.log(shares[i] / deviations[i]) - z * z / 2;
  }

  /** Searches outwards from the heaviest part by doubled steps, then between the last two. */
  @Override
  public double quantile(double probability) {
    double centre = means[heaviest];
    boolean up = excess(centre, probability) < 0;
    double step = up ? deviations[heaviest] : -deviations[heaviest];
    double near = centre;
    double far = centre + step;
    while ((excess(far, probability) < 0) == up) {
      step *= 2;
      near = far;
      far = centre + step;
    }
    double lower = Math.min(near, far);
    double upper = Math.max(near, far);
    return BracketedRoot.find(x -> excess(x, probability), lower, upper).value();
  }

  /** The probability below x less that wanted, taken from the nearer tail. */
  private double excess(double x, double probability) {
    return probability < 0.5 ? below(x) - probability : 1 - probability - above(x);
  }
}
