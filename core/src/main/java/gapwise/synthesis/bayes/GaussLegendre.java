package gapwise.synthesis.bayes;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Points and weights of Gauss and Legendre on [-1, 1], and the polynomial through values at these
 * points in its barycentric form (Berrut and Trefethen, SIAM Rev 2004;46:501, sections 4 and 6).
 */
final class GaussLegendre {
  /** Exact for polynomials to degree 31. */
  static final int POINTS = 16;

  private static final double[] PLACES = new double[POINTS];
  private static final double[] WEIGHTS = new double[POINTS];
  private static final double[] BARYCENTRIC = new double[POINTS];

  /** Weight times polynomial of degree 15, and 14, times degree plus a half. */
  private static final double[] LAST = new double[POINTS];

  private static final double[] BEFORE = new double[POINTS];

  static {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(POINTS);
    for (int i = 0; i < POINTS; i++) {
      PLACES[i] = rule.getPoint(i);
      WEIGHTS[i] = rule.getWeight(i);
      double size = Math.sqrt((1 - PLACES[i] * PLACES[i]) * WEIGHTS[i]);
      BARYCENTRIC[i] = i % 2 == 0 ? size : -size;
      double two = 1;
      double one = PLACES[i];
      for (int n = 2; n < POINTS; n++) {
        double next = ((2 * n - 1) * PLACES[i] * one - (n - 1) * two) / n;
        two = one;
        one = next;
      }
      LAST[i] = WEIGHTS[i] * one * (POINTS - 0.5);
      BEFORE[i] = WEIGHTS[i] * two * (POINTS - 1.5);
    }
  }

  private GaussLegendre() {}

  static double place(int i) {
    return PLACES[i];
  }

  static double weight(int i) {
    return WEIGHTS[i];
  }

  /** The polynomial through the values, at x from -1 to 1. */
  static double interpolate(double[] values, double x) {
    double above = 0;
    double below = 0;
    for (int i = 0; i < POINTS; i++) {
      double distance = x - PLACES[i];
      if (distance == 0) {
        return values[i];
      }
      double share = BARYCENTRIC[i] / distance;
      above += share * values[i];
      below += share;
    }
    return above / below;
  }

  /** What each point adds to the polynomial at x, times its value. */
  static double[] shares(double x) {
    double[] shares = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double[] one = new double[POINTS];
      one[i] = 1;
      shares[i] = interpolate(one, x);
    }
    return shares;
  }

  /**
   * The size of the last two coefficients of the polynomial through the values, by Legendre
   * polynomials; small where the polynomial has all of what it goes through.
   */
  static double lastCoefficients(double[] values) {
    double last = 0;
    double before = 0;
    for (int i = 0; i < POINTS; i++) {
      last += LAST[i] * values[i];
      before += BEFORE[i] * values[i];
    }
    return Math.max(Math.abs(last), Math.abs(before));
  }
}
