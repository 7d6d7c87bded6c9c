package gapwise.synthesis.network.exact;

import gapwise.budget.Work;
import gapwise.effect.ArmCounts;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.numbers.gamma.LogBeta;

/**
 * The events of the arms of one study given their total, the multivariate non-central
 * hypergeometric distribution: P(x) proportional to the product of C(n_j, x_j) exp(x_j theta_j)
 * over all x with that total (Fog, Commun Stat Simul Comput 2008;37:241). With two arms it is that
 * of a fourfold table given its margins.
 *
 * <p>Idea: a number c added to every theta changes nothing, so it is chosen such that binomial arms
 * with log odds theta_j + c expect the total. Each arm's terms are then taken relative to its
 * largest, outwards until they cannot be seen in a double, and the arms are added up one after the
 * other with their first and second moments; the last arm is only needed at the total. Time grows
 * with the product of the spreads of the two widest arms, not with the number of tables.
 */
final class GivenTotal {
  private static final double LEAST_TERM = 1e-17;

  /** Odds beyond exp of this are as good as none for every arm of finite size. */
  private static final double FARTHEST = 300;

  /** Terms this many standard deviations away, and some more, are never to be seen. */
  private static final double FAR = 9;

  /** The log odds at which arms expect the total are found well within one event. */
  private static final double SETTLED = 1e-6;

  private static final int MOST_STEPS = 200;

  /** Numbers of events whose ways are kept for each arm: enough for nearly every trial. */
  private static final int MOST_KEPT = 2000;

  private final double[] events;
  private final double[] patients;
  private final double total;
  private final double all;
  private final double own;
  private final double[][] ways;

  /**
   * @param arms with some event and some patient without, whole numbers
   */
  GivenTotal(List<ArmCounts> arms) {
    events = arms.stream().mapToDouble(ArmCounts::events).toArray();
    patients = arms.stream().mapToDouble(ArmCounts::total).toArray();
    double sum = 0;
    double whole = 0;
    double found = 0;
    for (int j = 0; j < events.length; j++) {
      sum += events[j];
      whole += patients[j];
      found += logChoose(patients[j], events[j]);
    }
    total = sum;
    all = whole;
    own = found;
    ways = new double[events.length][];
    for (int j = 0; j < events.length; j++) {
      ways[j] = new double[(int) Math.min(patients[j] + 1, MOST_KEPT)];
      Arrays.fill(ways[j], Double.NaN);
    }
  }

  private static double logChoose(double n, double x) {
    return -Math.log1p(n) - LogBeta.value(x + 1, n - x + 1);
  }

  int arms() {
    return events.length;
  }

  /** The logarithm of the ways to so many events in an arm; kept, since modes come back often. */
  private double logWays(int arm, double count) {
    double[] known = ways[arm];
    if (count >= known.length) {
      return logChoose(patients[arm], count);
    }
    int place = (int) count;
    if (Double.isNaN(known[place])) {
      known[place] = logChoose(patients[arm], count);
    }
    return known[place];
  }

  /** The arms with the fewest terms first. */
  private static int[] byWidth(Window[] windows) {
    int[] order = new int[windows.length];
    for (int j = 0; j < order.length; j++) {
      int at = j;
      while (at > 0 && windows[order[at - 1]].terms().length > windows[j].terms().length) {
        order[at] = order[at - 1];
        at--;
      }
      order[at] = j;
    }
    return order;
  }

  /**
   * What is known at some log odds.
   *
   * @param theta one an arm; a number added to all of them changes nothing
   */
  Moments at(double[] theta) {
    Work.check();
    int arms = events.length;
    double c = shift(theta);
    Window[] windows = new Window[arms];
    double target = total;
    double value = own;
    for (int j = 0; j < arms; j++) {
      windows[j] = Window.of(patients[j], theta[j] + c);
      double mode = windows[j].mode();
      target -= mode;
      value += (events[j] - mode) * (theta[j] + c) - logWays(j, mode);
    }
    int[] order = byWidth(windows);
    ArmSums sums = ArmSums.first(windows[order[0]]);
    for (int k = 1; k < arms - 1; k++) {
      sums = sums.with(windows[order[k]]);
    }
    ArmSums whole = sums.at((int) target, windows[order[arms - 1]]);
    double mass = whole.mass()[0];
    Moments moments = new Moments(arms);
    moments.value = value - Math.log(mass);
    for (int a = 0; a < arms; a++) {
      int j = order[a];
      double mean = whole.first()[a][0] / mass;
      moments.residuals[j] = events[j] - windows[j].mode() - mean;
      for (int b = 0; b <= a; b++) {
        int i = order[b];
        moments.covariance[i][j] =
            whole.second()[b][a][0] / mass - mean * (whole.first()[b][0] / mass);
        moments.covariance[j][i] = moments.covariance[i][j];
      }
    }
    return moments;
  }

  /**
   * What to add to the log odds for the arms to expect the total, by Newton's rule in a bracket.
   */
  private double shift(double[] theta) {
    double middle = Math.log(total / (all - total));
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double one : theta) {
      low = Math.min(low, middle - one);
      high = Math.max(high, middle - one);
    }
    double at = (low + high) / 2;
    for (int step = 0; step < MOST_STEPS && high - low > SETTLED; step++) {
      double sum = -total;
      double spread = 0;
      for (int j = 0; j < theta.length; j++) {
        double small = Math.exp(-Math.abs(theta[j] + at));
        double share = (theta[j] + at > 0 ? 1 : small) / (1 + small);
        sum += patients[j] * share;
        spread += patients[j] * small / ((1 + small) * (1 + small));
      }
      if (Math.abs(sum) < SETTLED) {
        return at;
      }
      if (sum > 0) {
        high = at;
      } else {
        low = at;
      }
      double next = at - sum / spread;
      at = next > low && next < high ? next : (low + high) / 2;
    }
    return at;
  }

  /**
   * The log likelihood of log odds, its slopes and, with the sign turned, its second derivatives.
   */
  static final class Moments {
    double value;

    /** Events less those expected. */
    final double[] residuals;

    final double[][] covariance;

    private Moments(int arms) {
      residuals = new double[arms];
      covariance = new double[arms][arms];
    }
  }

  /**
   * The terms of a binomial distribution that can be seen, relative to the largest.
   *
   * @param mode where that is
   * @param low the first term's place less the mode, 0 or below
   */
  record Window(double mode, int low, double[] terms) {
    static Window of(double n, double logOdds) {
      double odds = Math.exp(Math.max(-FARTHEST, Math.min(FARTHEST, logOdds)));
      double share = logOdds > 0 ? 1 / (1 + Math.exp(-logOdds)) : odds / (1 + odds);
      double mode = Math.min(n, Math.floor((n + 1) * share));
      int most = (int) Math.min(n, 16 + 2 * FAR * (1 + Math.sqrt(n * share * (1 - share))));
      double[] up = new double[most];
      int above = 0;
      double term = 1;
      for (double x = mode; x < n && above < most && term > LEAST_TERM; x++) {
        term *= odds * ((n - x) / (x + 1));
        up[above++] = term;
      }
      double[] down = new double[most];
      int below = 0;
      term = 1;
      for (double x = mode; x > 0 && below < most && term > LEAST_TERM; x--) {
        term *= x / (n - x + 1) / odds;
        down[below++] = term;
      }
      double[] terms = new double[below + above + 1];
      terms[below] = 1;
      System.arraycopy(up, 0, terms, below + 1, above);
      for (int i = 0; i < below; i++) {
        terms[below - 1 - i] = down[i];
      }
      return new Window(mode, -below, terms);
    }
  }
}
