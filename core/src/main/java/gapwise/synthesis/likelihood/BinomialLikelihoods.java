package gapwise.synthesis.likelihood;

import org.apache.commons.numbers.gamma.LogBeta;

/** Events among patients, x ~ Bin(n, p) with logit p = theta + offset. */
final class BinomialLikelihoods extends StudyLikelihoods {
  private final double[] events;
  private final double[] totals;
  private final double[] offsets;
  private final double[] constants;

  /**
   * @param events each 0 to its total
   * @param totals each above 0
   * @param offsets finite
   */
  BinomialLikelihoods(double[] events, double[] totals, double[] offsets) {
    this.events = events.clone();
    this.totals = totals.clone();
    this.offsets = offsets.clone();
    constants = new double[events.length];
    for (int i = 0; i < events.length; i++) {
      constants[i] = logChoose(totals[i], events[i]);
    }
  }

  /** log of n over x, -log(n+1) - log B(x+1, n-x+1), without the cancellation of factorials. */
  static double logChoose(double n, double x) {
    return -Math.log1p(n) - LogBeta.value(x + 1, n - x + 1);
  }

  @Override
  int size() {
    return events.length;
  }

  @Override
  void second(int study, double theta, double intercept, double[] d) {
    double x = events[study];
    double n = totals[study];
    double eta = theta + offsets[study];
    double e = Math.exp(-Math.abs(eta));
    double p = eta >= 0 ? 1 / (1 + e) : e / (1 + e);
    d[VALUE] = constants[study] + x * eta - n * (Math.max(eta, 0) + Math.log(1 + e));
    d[T] = x - n * p;
    d[TT] = -n * (e / ((1 + e) * (1 + e)));
  }

  @Override
  void all(int study, double theta, double intercept, double[] d) {
    second(study, theta, intercept, d);
    double eta = theta + offsets[study];
    double half = Math.tanh(eta / 2); // p - q
    double pq = -d[TT] / totals[study];
    d[TTT] = -d[TT] * half;
    d[TTTT] = d[TT] * (1 - 6 * pq);
  }

  @Override
  double start(int study) {
    return Math.log((events[study] + 0.5) / (totals[study] - events[study] + 0.5)) - offsets[study];
  }

  @Override
  double startInformation(int study) {
    double x = events[study] + 0.5;
    double y = totals[study] - events[study] + 0.5;
    return x * y / (x + y);
  }

  @Override
  Pull pull(int study) {
    if (events[study] == 0) {
      return Pull.DOWN;
    }
    return events[study] == totals[study] ? Pull.UP : Pull.NONE;
  }
}
