package gapwise.numeric;

import gapwise.budget.Work;
import java.util.function.DoubleUnaryOperator;

/**
 * The root of a continuous function inside a bracket: an interval at whose ends the function has
 * opposite signs, so that a root lies between them whatever the function does inside.
 *
 * <p>Idea: regula falsi with the weights of Anderson and Björck (BIT 1973;13:253) is fast near a
 * simple root but can creep from one side; whenever three steps have not halved the bracket, one
 * bisection is made. The bracket therefore always shrinks and the sign change, which is the proof,
 * is kept at every step. The search ends when the bracket is as narrow as doubles allow.
 */
public final class BracketedRoot {
  /** Three secant steps and one bisection per halving, over the 1100 halvings a double allows. */
  private static final int MOST_STEPS = 4400;

  private static final double RELATIVE_WIDTH = 4 * Math.ulp(1.0);

  private BracketedRoot() {}

  /**
   * What was found.
   *
   * @param value the root, inside the bracket
   * @param lower lower end of the last bracket
   * @param upper upper end of the last bracket
   * @param steps evaluations of the function after the two at the ends
   * @param converged whether the last bracket is as narrow as was asked
   */
  public record Root(double value, double lower, double upper, int steps, boolean converged) {
    public Root {
      if (!(lower <= value && value <= upper)) {
        throw new IllegalArgumentException(
            "root " + value + " is outside [" + lower + ", " + upper + "]");
      }
    }
  }

  /** Whether the two values prove a root between their places. */
  public static boolean brackets(double atLower, double atUpper) {
    return atLower == 0 || atUpper == 0 || (atLower < 0) != (atUpper < 0);
  }

  /**
   * Finds a root between two places.
   *
   * @param function continuous on the bracket; may be infinite at an end, never NaN
   * @param lower finite lower end
   * @param upper finite upper end, not below the lower
   * @throws IllegalArgumentException if the ends are no bracket: same sign, NaN, or out of order
   */
  public static Root find(DoubleUnaryOperator function, double lower, double upper) {
    if (!(Double.isFinite(lower) && Double.isFinite(upper) && lower <= upper)) {
      throw new IllegalArgumentException("no interval: [" + lower + ", " + upper + "]");
    }
    double atLower = function.applyAsDouble(lower);
    double atUpper = function.applyAsDouble(upper);
    if (Double.isNaN(atLower) || Double.isNaN(atUpper) || !brackets(atLower, atUpper)) {
      throw new IllegalArgumentException(
          "no change of sign: " + atLower + " at " + lower + ", " + atUpper + " at " + upper);
    }
    if (atLower == 0) {
      return new Root(lower, lower, lower, 0, true);
    }
    if (atUpper == 0) {
      return new Root(upper, upper, upper, 0, true);
    }
    return narrow(function, lower, atLower, upper, atUpper);
  }

  /**
   * Finds a root between two places to its own digits. {@link #find} stops at a width that is small
   * beside the whole bracket, which a root that is smaller by many powers of ten still is not
   * beside; here what it leaves is narrowed down again.
   *
   * @param function as there
   * @param lower as there, not below 0
   * @param upper as there
   */
  public static Root findHoweverSmall(DoubleUnaryOperator function, double lower, double upper) {
    Root root = find(function, lower, upper);
    while (root.converged() && root.upper() - root.lower() > 4 * RELATIVE_WIDTH * root.upper()) {
      root = find(function, root.lower(), root.upper());
    }
    return root;
  }

  private static Root narrow(
      DoubleUnaryOperator function, double from, double atFrom, double to, double atTo) {
    double a = from;
    double fa = atFrom;
    Work.check();
    double b = to;
    double fb = atTo;
    double absolute = 1e-17 * (to - from);
    double widthThreeStepsAgo = b - a;
    for (int step = 1; step <= MOST_STEPS; step++) {
      boolean bisect = !(Double.isFinite(fa) && Double.isFinite(fb));
      if (step % 4 == 0) {
        bisect |= b - a > widthThreeStepsAgo / 2;
        widthThreeStepsAgo = b - a;
      }
      double middle = a + (b - a) / 2;
      double c = bisect ? middle : a - fa * ((b - a) / (fb - fa));
      if (!(c > a && c < b)) {
        c = middle;
      }
      double fc = function.applyAsDouble(c);
      if (fc == 0) {
        return new Root(c, c, c, step, true);
      }
      if (Double.isNaN(fc)) {
        throw new IllegalArgumentException("the function has no value at " + c);
      }
      if ((fc < 0) == (fa < 0)) {
        fb = weighted(fb, fc, fa);
        a = c;
        fa = fc;
      } else {
        fa = weighted(fa, fc, fb);
        b = c;
        fb = fc;
      }
      double narrowest = absolute + RELATIVE_WIDTH * Math.max(Math.abs(a), Math.abs(b));
      if (b - a <= narrowest) {
        return new Root(a + (b - a) / 2, a, b, step, true);
      }
    }
    return new Root(a + (b - a) / 2, a, b, MOST_STEPS, false);
  }

  /** The value kept at the far end, made smaller so that the next secant reaches over the root. */
  private static double weighted(double far, double found, double replaced) {
    double weight = 1 - found / replaced;
    return far * (weight > 0 && Double.isFinite(weight) ? weight : 0.5);
  }
}
