package gapwise.synthesis.likelihood;

import org.apache.commons.numbers.gamma.LogGamma;

/** Events over person-time, x ~ Pois(T exp(theta)). */
final class PoissonLikelihoods extends StudyLikelihoods {
  private final double[] events;
  private final double[] logTimes;
  private final double[] constants;

  /**
   * @param events each at least 0
   * @param times each above 0
   */
  PoissonLikelihoods(double[] events, double[] times) {
    this.events = events.clone();
    logTimes = new double[times.length];
    constants = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      logTimes[i] = Math.log(times[i]);
      constants[i] = -LogGamma.value(events[i] + 1);
    }
  }

  @Override
  int size() {
    return events.length;
  }

  @Override
  void second(int study, double theta, double intercept, double[] d) {
    double eta = theta + logTimes[study];
    double expected = Math.exp(eta);
    d[VALUE] = constants[study] + events[study] * eta - expected;
    d[T] = events[study] - expected;
    d[TT] = -expected;
  }

  @Override
  void all(int study, double theta, double intercept, double[] d) {
    second(study, theta, intercept, d);
    d[TTT] = d[TT];
    d[TTTT] = d[TT];
  }

  @Override
  double start(int study) {
    return Math.log(events[study] + 0.5) - logTimes[study];
  }

  @Override
  double startInformation(int study) {
    return events[study] + 0.5;
  }

  @Override
  Pull pull(int study) {
    return events[study] == 0 ? Pull.DOWN : Pull.NONE;
  }
}
