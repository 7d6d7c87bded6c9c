package gapwise.synthesis.likelihood;

import gapwise.budget.Work;

/**
 * Events of the first group given all margins of a fourfold table, the non-central hypergeometric
 * distribution with log odds ratio theta: P(x) proportional to C(n1, x) C(n2, m - x) exp(x theta).
 *
 * <p>The sum over all tables with these margins starts at the most probable one and goes both ways
 * by the ratio of neighbours until what is left cannot be seen in a double, so it takes some 17
 * standard deviations of terms whatever the totals, and neither overflows nor underflows.
 * Derivatives of the log likelihood are x less the mean, and minus the second to fourth cumulants.
 */
final class HypergeometricLikelihoods extends StudyLikelihoods {
  /** Odds ratios beyond exp of this are as good as infinite for every table of finite size. */
  private static final double FARTHEST = 300;

  private static final double LEAST_TERM = 1e-18;

  /** A power of two. */
  private static final long ASKED_EVERY = 1024;

  private final double[] events;
  private final double[] first;
  private final double[] second;
  private final double[] all;
  private final double[] own;
  private final double[] sums = new double[5];

  /**
   * @param events of the first group
   * @param first patients of the first group
   * @param second patients of the second group
   * @param all events of both groups
   */
  HypergeometricLikelihoods(double[] events, double[] first, double[] second, double[] all) {
    this.events = events.clone();
    this.first = first.clone();
    this.second = second.clone();
    this.all = all.clone();
    own = new double[events.length];
    for (int i = 0; i < events.length; i++) {
      own[i] = logTables(i, events[i]);
    }
  }

  /** log of the number of ways to a table. */
  private double logTables(int i, double x) {
    return BinomialLikelihoods.logChoose(first[i], x)
        + BinomialLikelihoods.logChoose(second[i], all[i] - x);
  }

  private double least(int i) {
    return Math.max(0, all[i] - second[i]);
  }

  private double most(int i) {
    return Math.min(first[i], all[i]);
  }

  @Override
  int size() {
    return events.length;
  }

  @Override
  void second(int study, double theta, double intercept, double[] d) {
    all(study, theta, intercept, d);
  }

  @Override
  void all(int study, double theta, double intercept, double[] d) {
    double odds = Math.exp(Math.max(-FARTHEST, Math.min(FARTHEST, theta)));
    double top = mode(study, odds);
    sums[0] = 1;
    sums[1] = 0;
    sums[2] = 0;
    sums[3] = 0;
    sums[4] = 0;
    upwards(study, odds, top);
    downwards(study, odds, top);
    double total = sums[0];
    double mean = sums[1] / total;
    double square = sums[2] / total;
    double cube = sums[3] / total;
    double fourth = sums[4] / total;
    double variance = square - mean * mean;
    double m2 = mean * mean;
    d[VALUE] = own[study] - logTables(study, top) + (events[study] - top) * theta - Math.log(total);
    d[T] = events[study] - top - mean;
    d[TT] = -variance;
    d[TTT] = -(cube - 3 * mean * square + 2 * mean * m2);
    d[TTTT] = -(fourth - 4 * mean * cube + 6 * m2 * square - 3 * m2 * m2 - 3 * variance * variance);
  }

  private void upwards(int i, double odds, double top) {
    double term = 1;
    double most = most(i);
    double rest = second[i] - all[i];
    for (double y = top; y < most; y++) {
      askNowAndThen(y - top);
      term *= odds * ((first[i] - y) / (y + 1)) * ((all[i] - y) / (rest + y + 1));
      add(y + 1 - top, term);
      if (term < LEAST_TERM * sums[0]) {
        return;
      }
    }
  }

  private void downwards(int i, double odds, double top) {
    double term = 1;
    double least = least(i);
    double rest = second[i] - all[i];
    for (double y = top; y > least; y--) {
      askNowAndThen(top - y);
      term *= (y / (first[i] - y + 1)) * ((rest + y) / (all[i] - y + 1)) / odds;
      add(y - 1 - top, term);
      if (term < LEAST_TERM * sums[0]) {
        return;
      }
    }
  }

  /** A sum has some 17 standard deviations of terms, millions for counts of a billion. */
  private static void askNowAndThen(double terms) {
    if (((long) terms & ASKED_EVERY - 1) == ASKED_EVERY - 1) {
      Work.check();
    }
  }

  private void add(double distance, double term) {
    sums[0] += term;
    double power = term * distance;
    sums[1] += power;
    power *= distance;
    sums[2] += power;
    power *= distance;
    sums[3] += power;
    sums[4] += power * distance;
  }

  /** The most probable x: where the ratio of neighbours passes 1, the root of a quadratic. */
  private double mode(int i, double odds) {
    double a = odds - 1;
    double b = -((all[i] + first[i] + 2) * odds + second[i] - all[i]);
    double c = odds * (first[i] + 1) * (all[i] + 1);
    double discriminant = Math.sqrt(Math.max(0, b * b - 4 * a * c));
    double root = b <= 0 ? 2 * c / (discriminant - b) : (b + discriminant) / (-2 * a);
    return Math.max(least(i), Math.min(most(i), Math.floor(root)));
  }

  @Override
  double start(int study) {
    double x = events[study];
    double y = all[study] - x;
    return Math.log((x + 0.5) / (first[study] - x + 0.5))
        - Math.log((y + 0.5) / (second[study] - y + 0.5));
  }

  @Override
  double startInformation(int study) {
    double x = events[study];
    double y = all[study] - x;
    return 1
        / (1 / (x + 0.5)
            + 1 / (first[study] - x + 0.5)
            + 1 / (y + 0.5)
            + 1 / (second[study] - y + 0.5));
  }

  @Override
  Pull pull(int study) {
    if (events[study] == least(study)) {
      return Pull.DOWN;
    }
    return events[study] == most(study) ? Pull.UP : Pull.NONE;
  }
}
