package gapwise.numeric;

import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Gauss-Hermite quadrature for a standard normal variable: the sum of weight times f(node) is the
 * mean of f exactly for polynomials of degree up to 2n - 1 (Golub and Welsch, Math Comp
 * 1969;23:221). Immutable; each number of points is worked out once.
 *
 * <p>Everything is made from the Hermite functions psi_k(x) = H_k(x) exp(-x^2/2)/root(2^k k! root
 * pi), which stay within 1 where polynomials would overflow and weights underflow. The nodes are
 * the zeros of psi_n, told apart by the number of changes of sign in psi_0 ... psi_n (a Sturm
 * sequence) and narrowed down by halving; the weight times exp(x^2) is 1/sum(psi_k(x)^2) over k
 * below n.
 */
public final class GaussHermite {
  /** The most points. */
  public static final int MOST_POINTS = 200;

  private static final AtomicReferenceArray<GaussHermite> KNOWN =
      new AtomicReferenceArray<>(MOST_POINTS + 1);

  private final double[] nodes;
  private final double[] logScaled;

  private GaussHermite(int points) {
    nodes = new double[points];
    logScaled = new double[points];
    for (int i = 0; i < points / 2; i++) {
      double x = zero(points, i);
      nodes[points - 1 - i] = Math.sqrt(2) * x;
      nodes[i] = -nodes[points - 1 - i];
      logScaled[i] = logScaledWeight(points, x);
      logScaled[points - 1 - i] = logScaled[i];
    }
    if (points % 2 == 1) {
      logScaled[points / 2] = logScaledWeight(points, 0);
    }
  }

  /**
   * The quadrature with some number of points.
   *
   * @param points from 1 to {@link #MOST_POINTS}
   */
  public static GaussHermite of(int points) {
    if (points < 1 || points > MOST_POINTS) {
      throw new IllegalArgumentException("points must be 1 to " + MOST_POINTS + ", was " + points);
    }
    GaussHermite known = KNOWN.get(points);
    if (known == null) {
      known = new GaussHermite(points);
      KNOWN.set(points, known);
    }
    return known;
  }

  /** How many points. */
  public int points() {
    return nodes.length;
  }

  /** A node, in standard deviations; nodes rise and lie about 0 as mirror images. */
  public double node(int i) {
    return nodes[i];
  }

  /** The weight of a node; weights sum to 1. May underflow to 0 above some 180 points. */
  public double weight(int i) {
    return Math.exp(logWeight(i));
  }

  /** The logarithm of {@link #weight}. */
  public double logWeight(int i) {
    return logScaled[i] - nodes[i] * nodes[i] / 2;
  }

  /**
   * The logarithm of weight times exp(node^2/2): what multiplies g(node) root(1/(2 pi)) when the
   * integral of g itself is wanted rather than a mean over the normal distribution.
   */
  public double logScaledWeight(int i) {
    return logScaled[i];
  }

  /** The zero of psi_n with {@code above} zeros greater than it, for zeros above 0. */
  private static double zero(int n, int above) {
    double low = 0;
    double high = Math.sqrt(2.0 * n + 1);
    while (true) {
      double middle = low + (high - low) / 2;
      if (middle <= low || middle >= high) {
        return middle;
      }
      if (zerosAbove(n, middle) > above) {
        low = middle;
      } else {
        high = middle;
      }
    }
  }

  private static int zerosAbove(int n, double x) {
    double before = 0;
    double value = 1; // only signs are looked at, so the factor exp(-x^2/2) is left out
    int changes = 0;
    for (int k = 0; k < n; k++) {
      double next = Math.sqrt(2.0 / (k + 1)) * x * value - Math.sqrt(k / (k + 1.0)) * before;
      if ((next < 0) != (value < 0)) {
        changes++;
      }
      double size = Math.abs(next) > 1e100 ? 1e-100 : 1;
      before = value * size;
      value = next * size;
    }
    return changes;
  }

  private static double logScaledWeight(int n, double x) {
    double before = 0;
    double value = Math.exp(-x * x / 2) / Math.sqrt(Math.sqrt(Math.PI));
    double squares = 0;
    for (int k = 0; k < n; k++) {
      squares += value * value;
      double next = Math.sqrt(2.0 / (k + 1)) * x * value - Math.sqrt(k / (k + 1.0)) * before;
      before = value;
      value = next;
    }
    return -Math.log(squares) - Math.log(Math.PI) / 2;
  }
}
