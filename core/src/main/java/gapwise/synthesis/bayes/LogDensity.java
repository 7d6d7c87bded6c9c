package gapwise.synthesis.bayes;

import java.util.function.DoubleUnaryOperator;

/** The logarithm of a density up to a constant, at some places at once. */
interface LogDensity {
  /** One for each place; the array is the caller's. */
  double[] at(double[] places);

  /** Of one that is worked out place by place. */
  static LogDensity ofEach(DoubleUnaryOperator log) {
    return places -> {
      double[] logs = new double[places.length];
      for (int i = 0; i < logs.length; i++) {
        logs[i] = log.applyAsDouble(places[i]);
      }
      return logs;
    };
  }
}
