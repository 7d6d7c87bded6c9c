package gapwise.numeric;

import gapwise.budget.Work;
import org.apache.commons.numbers.gamma.Erfc;

/** A mixture of normal distributions. */
public final class NormalMixture implements Continuous {
  private static final double ROOT_TWO = Math.sqrt(2);

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  /** Steps this small, beside the spread and the place, change nothing that is told. */
  private static final double SETTLED = 1e-14;

  /** Halvings alone need fewer. */
  private static final int MOST_STEPS = 200;

  private final double[] shares;
  private final double[] means;
  private final double[] deviations;
  private final double[] heights;
  private final double[] logHeights;
  private final int heaviest;

  /**
   * A mixture.
   *
   * @param shares sum to 1
   * @param means as many
   * @param deviations standard deviations, as many, above 0
   */
  public NormalMixture(double[] shares, double[] means, double[] deviations) {
    this.shares = shares.clone();
    this.means = means.clone();
    this.deviations = deviations.clone();
    this.heights = new double[shares.length];
    this.logHeights = new double[shares.length];
    int most = 0;
    for (int i = 0; i < shares.length; i++) {
      heights[i] = shares[i] / deviations[i];
      logHeights[i] = Math.log(heights[i]);
      most = shares[i] > shares[most] ? i : most;
    }
    this.heaviest = most;
  }

  /** Its mean. */
  public double mean() {
    return TermSum.of(shares.length, i -> shares[i] * means[i]);
  }

  /** Its standard deviation. */
  public double standardDeviation() {
    double mean = mean();
    return Math.sqrt(
        TermSum.of(
            shares.length,
            i -> {
              double off = means[i] - mean;
              return shares[i] * (deviations[i] * deviations[i] + off * off);
            }));
  }

  @Override
  public double below(double x) {
    Work.check();
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += shares[i] * Erfc.value((means[i] - x) / (deviations[i] * ROOT_TWO));
    }
    return Math.min(1, sum / 2);
  }

  @Override
  public double above(double x) {
    Work.check();
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += shares[i] * Erfc.value((x - means[i]) / (deviations[i] * ROOT_TWO));
    }
    return Math.min(1, sum / 2);
  }

  @Override
  public double logDensity(double x) {
    Work.check();
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
    return logHeights[i] - z * z / 2;
  }

  /**
   * Searches outwards from the heaviest part by doubled steps, then between the last two by Newton
   * steps that are halvings where they would leave the bracket.
   */
  @Override
  public double quantile(double probability) {
    double near = means[heaviest];
    boolean up = excess(near, probability) < 0;
    double step = up ? deviations[heaviest] : -deviations[heaviest];
    double far = near + step;
    while (Double.isFinite(far) && (excess(far, probability) < 0) == up) {
      step *= 2;
      near = far;
      far = means[heaviest] + step;
    }
    return between(Math.min(near, far), Math.max(near, far), probability);
  }

  private double between(double from, double to, double probability) {
    double lower = from;
    double upper = to;
    double x = lower + (upper - lower) / 2;
    for (int i = 0; i < MOST_STEPS; i++) {
      double excess = excess(x, probability);
      if (excess < 0) {
        lower = x;
      } else {
        upper = x;
      }
      double next = x - excess / density(x);
      if (!(next > lower && next < upper)) {
        next = lower + (upper - lower) / 2;
      }
      if (Math.abs(next - x) <= SETTLED * Math.max(deviations[heaviest], Math.abs(x))) {
        return next;
      }
      x = next;
    }
    return x;
  }

  private double density(double x) {
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      double z = (x - means[i]) / deviations[i];
      sum += heights[i] * Math.exp(-z * z / 2);
    }
    return sum / ROOT_TWO_PI;
  }

  /** The probability below x less that wanted, taken from the nearer tail. */
  private double excess(double x, double probability) {
    return probability < 0.5 ? below(x) - probability : 1 - probability - above(x);
  }
}
