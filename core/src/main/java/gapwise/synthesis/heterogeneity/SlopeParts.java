package gapwise.synthesis.heterogeneity;

import java.util.Optional;

/**
 * The two parts A and B of twice the slope of a likelihood of tau squared, with their derivatives;
 * see {@link OneHump}.
 *
 * @param at the tau squared
 * @param rise A = y'P^2y, above 0
 * @param riseCubes y'P^3y, less half the derivative of A
 * @param fall B, above 0
 * @param fallSquares less the derivative of B
 */
record SlopeParts(double at, double rise, double riseCubes, double fall, double fallSquares) {
  /** Digits that differences of sums may lose before nothing is proved by them. */
  private static final double LEAST_SHARE = 1e-7;

  /** Sums over studies with w = 1/(v + t) and e the effect from any one place. */
  record Sums(
      double w,
      double we,
      double ww,
      double wwe,
      double wwee,
      double www,
      double wwwe,
      double wwwee) {

    /** The parts about the weighted mean; empty if they are small beside what they are from. */
    Optional<SlopeParts> parts(double at, boolean restricted) {
      double mean = we / w;
      double rise = wwee - mean * (2 * wwe - mean * ww);
      double cubes = wwwee - mean * (2 * wwwe - mean * www);
      double shift = wwe - mean * ww;
      double riseCubes = cubes - shift * shift / w;
      double fall = restricted ? w - ww / w : w;
      double fallSquares = restricted ? ww - (2 * www - ww * ww / w) / w : ww;
      boolean kept =
          rise > LEAST_SHARE * wwee
              && riseCubes > LEAST_SHARE * wwwee
              && fall > LEAST_SHARE * w
              && fallSquares > LEAST_SHARE * ww;
      return kept
          ? Optional.of(new SlopeParts(at, rise, riseCubes, fall, fallSquares))
          : Optional.empty();
    }
  }

  /** A^(-1/2). */
  double a() {
    return 1 / Math.sqrt(rise);
  }

  double slopeOfA() {
    return riseCubes / (rise * Math.sqrt(rise));
  }

  /** 1/B. */
  double b() {
    return 1 / fall;
  }

  double slopeOfB() {
    return fallSquares / (fall * fall);
  }

  /** The derivative of A - B. */
  double derivative() {
    return fallSquares - 2 * riseCubes;
  }

  /** Newton's step towards a^2/b = B/A = 1. */
  double step() {
    return (rise - fall) * rise / (2 * fall * riseCubes - rise * fallSquares);
  }
}
