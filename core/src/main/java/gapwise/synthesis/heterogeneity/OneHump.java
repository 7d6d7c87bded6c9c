package gapwise.synthesis.heterogeneity;

import java.util.Optional;
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

  /** The likelihood of tau squared of some studies, as far as the proof sees it. */
  interface Likelihood {
    /** D. */
    double unweightedSquares();

    /** A first guess of tau squared; may be below 0. */
    double unweightedMomentEstimate();

    /** The smallest variance within a study, or one below it. */
    double smallestVariance();

    /** A and B at a tau squared of at least 0; empty if too many digits of them are lost. */
    Optional<SlopeParts> partsAt(double tauSquared);

    /** b at 0, or 0, with which nothing is proved, if its digits are lost. */
    default double bAtZero() {
      return partsAt(0).map(SlopeParts::b).orElse(0.0);
    }

    /** Twice the slope, A - B, with no digits lost that can be kept. */
    double slopeAt(double tauSquared);
  }

  private final Likelihood likelihood;

  /** 1/sqrt(D). */
  private final double slopeAtInfinity;

  private OneHump(Likelihood likelihood, double unweightedSquares) {
    this.likelihood = likelihood;
    this.slopeAtInfinity = 1 / Math.sqrt(unweightedSquares);
  }

  /** The place of the only top; empty where it cannot be proved to be the only one. */
  static OptionalDouble of(Likelihood likelihood) {
    double squares = likelihood.unweightedSquares();
    return squares > 0 ? new OneHump(likelihood, squares).top() : OptionalDouble.empty();
  }

  /** The same for the studies of a sample. */
  static OptionalDouble of(EffectSample sample, boolean restricted) {
    return of(new OneMeanLikelihood(sample, restricted));
  }

  private OptionalDouble top() {
    double at = likelihood.unweightedMomentEstimate();
    for (int steps = 0; steps < MOST_STEPS && !Double.isNaN(at); steps++) {
      Optional<SlopeParts> found = likelihood.partsAt(Math.max(0, at));
      if (found.isEmpty()) {
        return OptionalDouble.empty();
      }
      SlopeParts parts = found.get();
      if (parts.at() == 0 && parts.rise() <= parts.fall()) {
        return fallsBeyond(parts) ? OptionalDouble.of(0) : OptionalDouble.empty();
      }
      at = parts.at() + parts.step();
      if (Math.abs(at - parts.at()) <= SETTLED * at) {
        return risesUpTo(parts) && fallsBeyond(parts)
            ? OptionalDouble.of(polished(parts))
            : OptionalDouble.empty();
      }
    }
    return OptionalDouble.empty();
  }

  /** One more step by the sums that lose no digits. */
  private double polished(SlopeParts parts) {
    double at = parts.at() + parts.step();
    return Math.max(0, at - likelihood.slopeAt(at) / parts.derivative());
  }

  /** Whether the likelihood rises all the way from 0 to a top, in as few pieces as will do. */
  private boolean risesUpTo(SlopeParts top) {
    double bottom = likelihood.bAtZero();
    SlopeParts to = top;
    double share = SHORTER;
    for (int pieces = 0; pieces < MOST_PIECES; pieces++) {
      if (rises(0, bottom, to)) {
        return true;
      }
      double from = share * to.at();
      Optional<SlopeParts> parts = likelihood.partsAt(from);
      if (parts.isPresent() && rises(from, parts.get().b(), to)) {
        to = parts.get();
        share = SHORTER;
      } else {
        share = (1 + share) / 2;
      }
    }
    return false;
  }

  /** Whether the square of the tangent to a at the upper end is below the chord of b. */
  private static boolean rises(double from, double bFrom, SlopeParts to) {
    double tangent = Math.max(0, to.a() - to.slopeOfA() * (to.at() - from));
    return tangent * tangent < bFrom;
  }

  /** Whether the likelihood falls all the way from a point, in as few pieces as will do. */
  private boolean fallsBeyond(SlopeParts point) {
    SlopeParts from = point;
    double length = Math.max(from.at(), likelihood.smallestVariance());
    for (int pieces = 0; pieces < MOST_PIECES; pieces++) {
      if (falls(from, slopeAtInfinity)) {
        return true;
      }
      Optional<SlopeParts> to = likelihood.partsAt(from.at() + length);
      if (to.isPresent() && falls(from, (to.get().a() - from.a()) / length)) {
        from = to.get();
        length *= 4;
      } else {
        length /= 4;
      }
    }
    return false;
  }

  /** Whether the square of a line from a stays above the tangent to b. */
  private static boolean falls(SlopeParts from, double slopeOfLine) {
    double constant = Math.max(0, from.a() * from.a() - from.b());
    double linear = 2 * from.a() * slopeOfLine - from.slopeOfB();
    return linear > 0 || linear * linear < 4 * slopeOfLine * slopeOfLine * constant;
  }
}
