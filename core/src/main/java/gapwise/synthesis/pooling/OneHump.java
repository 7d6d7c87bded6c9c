package gapwise.synthesis.pooling;

import java.util.OptionalDouble;

/**
 * The highest point of the likelihood of tau squared for one mean, where a few sums over the
 * studies prove that it is the only one; otherwise nothing is told and the whole range has to be
 * searched.
 *
 * <p>Twice the slope is A(t) - B(t), with A = y'P^2y and B = tr P (restricted) or tr W (full). In
 * the eigenvalues l of the variances within studies between the contrasts, A is the sum of z^2/(l +
 * t)^2 and B that of 1/(l + t) (for the full likelihood l are the variances themselves). So a =
 * A^(-1/2) and b = 1/B are power means of l + t, which rise and are concave, and the slope of a
 * never falls below 1/sqrt(D), its value at infinity, where D is the sum of z^2, the squared
 * unweighted residuals. The likelihood falls where a^2 is above b and rises where it is below:
 *
 * <ul>
 *   <li>Beyond a point, a lies above its line with the slope 1/sqrt(D), and b below its tangent. If
 *       the square of the one stays above the other, the likelihood falls for good.
 *   <li>Between 0 and a top, a lies below its tangent at the top and b above its chord. The square
 *       of a line is convex, so if it is below the chord at 0 it is so all the way: the likelihood
 *       rises up to the top.
 * </ul>
 *
 * The same with chords and tangents of pieces proves it piece by piece where one line for all will
 * not do. Where all variances are equal a and b are straight lines and a^2/b is one too, which is
 * why Newton's steps on it take few passes.
 */
final class OneHump {
  /** Steps before the search is left to the scan. */
  private static final int MOST_STEPS = 12;

  /**
   * A step this small, against the top, leaves an error far below that of doubles after one more.
   */
  private static final double SETTLED = 1e-6;

  /** Pieces of the range that are tried before the proof is given up. */
  private static final int MOST_PIECES = 16;

  /** The share of the way to a point that is tried first as the lower end of a piece. */
  private static final double SHORTER = 0.2;

  /** Digits that differences of sums may lose before nothing is proved by them. */
  private static final double LEAST_SHARE = 1e-7;

  private final EffectSample sample;
  private final boolean restricted;

  /** 1/sqrt(D). */
  private final double slopeAtInfinity;

  private final double unweightedMoment;

  private OneHump(EffectSample sample, boolean restricted) {
    this.sample = sample;
    this.restricted = restricted;
    int k = sample.size();
    double centre = sample.effect(sample.mostExact());
    double effects = 0;
    double squares = 0;
    double variances = 0;
    for (int i = 0; i < k; i++) {
      double effect = sample.effect(i) - centre;
      effects += effect;
      squares += effect * effect;
      variances += sample.variance(i);
    }
    double residual = squares - effects * effects / k;
    this.slopeAtInfinity = residual > LEAST_SHARE * squares ? 1 / Math.sqrt(residual) : 0;
    this.unweightedMoment = residual / (k - 1) - variances / k;
  }

  /** The place of the only top; empty where it cannot be proved to be the only one. */
  static OptionalDouble of(EffectSample sample, boolean restricted) {
    return new OneHump(sample, restricted).top();
  }

  private OptionalDouble top() {
    double at = slopeAtInfinity == 0 ? Double.NaN : unweightedMoment;
    for (int steps = 0; steps < MOST_STEPS && !Double.isNaN(at); steps++) {
      Sums sums = new Sums(Math.max(0, at));
      if (!sums.trusted) {
        return OptionalDouble.empty();
      }
      if (sums.at == 0 && sums.rise <= sums.fall) {
        return fallsBeyond(sums) ? OptionalDouble.of(0) : OptionalDouble.empty();
      }
      at = sums.at + sums.step();
      if (Math.abs(at - sums.at) <= SETTLED * at) {
        return risesUpTo(sums) && fallsBeyond(sums)
            ? OptionalDouble.of(polished(sums))
            : OptionalDouble.empty();
      }
    }
    return OptionalDouble.empty();
  }

  /** One more step by the sums that lose no digits. */
  private double polished(Sums sums) {
    double at = sums.at + sums.step();
    double slope = OneMeanSums.likelihoodSlope(sample, at, restricted);
    return Math.max(0, at - slope / (sums.fallSquares - 2 * sums.riseCubes));
  }

  /** Whether the likelihood rises all the way from 0 to a top, in as few pieces as will do. */
  private boolean risesUpTo(Sums top) {
    double bottom = bAtZero();
    Sums to = top;
    double share = SHORTER;
    for (int pieces = 0; pieces < MOST_PIECES; pieces++) {
      if (rises(0, bottom, to)) {
        return true;
      }
      Sums from = new Sums(share * to.at);
      if (from.trusted && rises(from.at, from.b(), to)) {
        to = from;
        share = SHORTER;
      } else {
        share = (1 + share) / 2;
      }
    }
    return false;
  }

  /** Whether the square of the tangent to a at the upper end is below the chord of b. */
  private static boolean rises(double from, double bFrom, Sums to) {
    double tangent = Math.max(0, to.a() - to.slopeOfA() * (to.at - from));
    return tangent * tangent < bFrom;
  }

  /** b at 0, or 0, with which nothing is proved, if its digits are lost. */
  private double bAtZero() {
    double w = 0;
    double ww = 0;
    for (int i = 0; i < sample.size(); i++) {
      double weight = 1 / sample.variance(i);
      w += weight;
      ww += weight * weight;
    }
    double fall = restricted ? w - ww / w : w;
    return fall > LEAST_SHARE * w ? 1 / fall : 0;
  }

  /** Whether the likelihood falls all the way from a point, in as few pieces as will do. */
  private boolean fallsBeyond(Sums point) {
    Sums from = point;
    double length = Math.max(from.at, sample.variance(sample.mostExact()));
    for (int pieces = 0; pieces < MOST_PIECES; pieces++) {
      if (falls(from, slopeAtInfinity)) {
        return true;
      }
      Sums to = new Sums(from.at + length);
      if (to.trusted && falls(from, (to.a() - from.a()) / length)) {
        from = to;
        length *= 4;
      } else {
        length /= 4;
      }
    }
    return false;
  }

  /** Whether the square of a line from a stays above the tangent to b. */
  private static boolean falls(Sums from, double slopeOfLine) {
    double constant = Math.max(0, from.a() * from.a() - from.b());
    double linear = 2 * from.a() * slopeOfLine - from.slopeOfB();
    return linear > 0 || linear * linear < 4 * slopeOfLine * slopeOfLine * constant;
  }

  /** A and B with their derivatives at a tau squared, in one pass. */
  private final class Sums {
    private final double at;

    /** A. */
    private final double rise;

    /** y'P^3y, less half the derivative of A. */
    private final double riseCubes;

    /** B. */
    private final double fall;

    /** tr P^2 or tr W^2, less the derivative of B. */
    private final double fallSquares;

    private final boolean trusted;

    Sums(double at) {
      this.at = at;
      double centre = sample.effect(sample.mostExact());
      double w = 0;
      double we = 0;
      double ww = 0;
      double wwe = 0;
      double wwee = 0;
      double www = 0;
      double wwwe = 0;
      double wwwee = 0;
      for (int i = 0; i < sample.size(); i++) {
        double weight = 1 / (sample.variance(i) + at);
        double effect = sample.effect(i) - centre;
        double pull = weight * effect;
        double square = weight * weight;
        w += weight;
        we += pull;
        ww += square;
        wwe += weight * pull;
        wwee += pull * pull;
        www += weight * square;
        wwwe += square * pull;
        wwwee += weight * (pull * pull);
      }
      double mean = we / w;
      this.rise = wwee - mean * (2 * wwe - mean * ww);
      double cubes = wwwee - mean * (2 * wwwe - mean * www);
      double shift = wwe - mean * ww;
      this.riseCubes = cubes - shift * shift / w;
      this.fall = restricted ? w - ww / w : w;
      this.fallSquares = restricted ? ww - (2 * www - ww * ww / w) / w : ww;
      this.trusted =
          rise > LEAST_SHARE * wwee
              && riseCubes > LEAST_SHARE * wwwee
              && fall > LEAST_SHARE * w
              && fallSquares > LEAST_SHARE * ww;
    }

    double a() {
      return 1 / Math.sqrt(rise);
    }

    double slopeOfA() {
      return riseCubes / (rise * Math.sqrt(rise));
    }

    double b() {
      return 1 / fall;
    }

    double slopeOfB() {
      return fallSquares / (fall * fall);
    }

    /** Newton's step towards a^2/b = B/A = 1. */
    double step() {
      return (rise - fall) * rise / (2 * fall * riseCubes - rise * fallSquares);
    }
  }
}
