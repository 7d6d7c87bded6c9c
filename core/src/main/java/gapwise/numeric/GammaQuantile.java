package gapwise.numeric;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.gamma.RegularizedGamma;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Quantiles of the gamma distribution of scale 1 by bracketed root of the regularised incomplete
 * gamma function. The bracket grows out of the approximation of Wilson and Hilferty (Proc Natl Acad
 * Sci USA 1931;17:684). Its relative error falls with the shape: at 1e9 it is 3e-14 five standard
 * deviations out, measured against the root, so that for far greater shapes, where the function no
 * longer converges there, it is as exact as a double.
 */
public final class GammaQuantile {
  private static final double APPROXIMATED_FROM = 1e10;

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private GammaQuantile() {}

  /**
   * The x with {@code P(a, x) = probability}.
   *
   * @param probability above 0 and below 1
   * @param a shape, above 0
   */
  public static double lowerTail(double probability, double a) {
    return near(
        x -> RegularizedGamma.P.value(a, x) - probability,
        a,
        NORMAL.inverseCumulativeProbability(probability));
  }

  /** The x with {@code 1 - P(a, x) = probability}; arguments as in {@link #lowerTail}. */
  public static double upperTail(double probability, double a) {
    return near(
        x -> probability - RegularizedGamma.Q.value(a, x),
        a,
        NORMAL.inverseSurvivalProbability(probability));
  }

  private static double near(DoubleUnaryOperator rising, double a, double z) {
    double root = 1 - 1 / (9 * a) + z / (3 * Math.sqrt(a));
    double guess = Math.max(0, a * root * root * root);
    if (a >= APPROXIMATED_FROM) {
      return guess;
    }
    double step = Math.sqrt(a) / 100;
    double lower = Math.max(0, guess - step);
    double upper = guess + step;
    while (lower > 0 && rising.applyAsDouble(lower) > 0) {
      step *= 2;
      lower = Math.max(0, guess - step);
    }
    while (rising.applyAsDouble(upper) < 0) {
      step *= 2;
      upper = guess + step;
    }
    return BracketedRoot.find(rising, lower, upper).value();
  }
}
