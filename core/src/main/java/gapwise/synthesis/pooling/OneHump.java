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
 * Where all variances are equal a and b are straight lines and a^2/b is one too, which is why
 * Newton's steps on it take few passes.
 */
final class OneHump {
  /** Steps before the search is left to the scan. */
  private static final int MOST_STEPS = 12;

  /** A step this small, against the top, leaves an error far below that of doubles after one more. */
  private static final double SETTLED = 1e-6;

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
    if (slopeAtInfinity == 0) {
      return OptionalDouble.empty();
    }
    Sums atZero = new Sums(0);
    if (!atZero.trusted()) {
      return OptionalDouble.empty();
    }
    if (atZero.rise <= atZero.fall) {
      return fallsBeyond(atZero) ? OptionalDouble.of(0) : OptionalDouble.empty();
    }
    double at = unweightedMoment > 0 ? unweightedMoment : atZero.step();
    for (int steps = 0; steps < MOST_STEPS && at > 0; steps++) {
      Sums sums = new Sums(at);
      double next = at + sums.step();
      if (!sums.trusted()) {
        return OptionalDouble.empty();
      }
      if (Math.abs(next - at) <= SETTLED * next) {
        return risesFrom(atZero, sums) && fallsBeyond(sums)
            ? OptionalDouble.of(polished(sums))
            : OptionalDouble.empty();
      }
      at = next > 0 ? next : at / 4;
    }
    return OptionalDouble.empty();
  }

  /** One more step by the sums that lose no digits. */
  private double polished(Sums sums) {
    double at = sums.at + sums.step();
    double slope = OneMeanSums.likelihoodSlope(sample, at, restricted);
    return Math.max(0, at - slope / (sums.fallSquares - 2 * sums.riseCubes));
  }

  private boolean risesFrom(Sums zero, Sums top) {
    double tangent = Math.max(0, top.a() - top.slopeOfA() * top.at);
    return tangent * tangent < zero.b();
  }

  private boolean fallsBeyond(Sums from) {
    double constant = Math.max(0, from.a() * from.a() - from.b());
    double linear = 2 * from.a() * slopeAtInfinity - from.slopeOfB();
    return linear > 0 || linear * linear < 4 * slopeAtInfinity * slopeAtInfinity * constant;
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

    boolean trusted() {
      return trusted;
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
