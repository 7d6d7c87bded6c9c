package gapwise.synthesis.likelihood;

import java.util.HashMap;
import java.util.Map;
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
  void slopes(int study, double theta, double intercept, double[] d) {
    double eta = theta + offsets[study];
    slopesAt(study, eta, Math.exp(-Math.abs(eta)), d);
  }

  @Override
  void second(int study, double theta, double intercept, double[] d) {
    double eta = theta + offsets[study];
    double e = Math.exp(-Math.abs(eta));
    d[VALUE] =
        constants[study]
            + events[study] * eta
            - totals[study] * (Math.max(eta, 0) + Math.log(1 + e));
    slopesAt(study, eta, e, d);
  }

  private void slopesAt(int study, double eta, double e, double[] d) {
    double n = totals[study];
    double larger = 1 / (1 + e);
    double smaller = e * larger;
    d[T] = events[study] - n * (eta >= 0 ? larger : smaller);
    d[TT] = -n * (larger * smaller);
  }

  @Override
  void all(int study, double theta, double intercept, double[] d) {
    second(study, theta, intercept, d);
    double eta = theta + offsets[study];
    double e = Math.exp(-Math.abs(eta));
    double half = Math.copySign((1 - e) / (1 + e), eta); // p - q
    double pq = -d[TT] / totals[study];
    d[TTT] = -d[TT] * half;
    d[TTTT] = d[TT] * (1 - 6 * pq);
  }

  /** Small series repeat the same few counts: 10 of 10, 12 of 12. */
  @Override
  int[] multiplicities() {
    Map<Arm, Integer> first = new HashMap<>();
    int[] multiplicities = new int[size()];
    for (int i = 0; i < size(); i++) {
      Integer earlier = first.putIfAbsent(new Arm(events[i], totals[i], offsets[i]), i);
      multiplicities[earlier == null ? i : earlier]++;
    }
    return multiplicities;
  }

  private record Arm(double events, double total, double offset) {}

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
