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

  static {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(POINTS);
    for (int i = 0; i < POINTS; i++) {
      PLACES[i] = rule.getPoint(i);
      WEIGHTS[i] = rule.getWeight(i);
      double size = Math.sqrt((1 - PLACES[i] * PLACES[i]) * WEIGHTS[i]);
      BARYCENTRIC[i] = i % 2 == 0 ? size : -size;
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
}
