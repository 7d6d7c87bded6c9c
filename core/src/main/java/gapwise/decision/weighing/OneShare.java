package gapwise.decision.weighing;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * What so many of so many say of one true share, every share as likely before: a beta distribution
 * with shapes x + 1 and n - x + 1.
 *
 * @param events x, from 0 to n
 * @param total n, 1 or more
 */
public record OneShare(int events, int total) {
  /** The density beyond so many standard deviations adds nothing that a double shows. */
  private static final double REACH = 14;

  private static final int PIECES = 64;
  private static final GaussIntegrator PIECE = new GaussIntegratorFactory().legendre(16, -1, 1);

  public OneShare {
    if (events < 0 || total < 1 || events > total) {
      throw new IllegalArgumentException("no share: " + events + " of " + total);
    }
  }

  private BetaDistribution law() {
    return BetaDistribution.of(events + 1.0, total - events + 1.0);
  }

  /**
   * The chance that the true share is greater than a number.
   *
   * @param share from 0 to 1
   */
  public double above(double share) {
    return law().survivalProbability(share);
  }

  /** The share that the true one is as likely above as below. */
  public double flips() {
    return law().inverseCumulativeProbability(0.5);
  }

  /**
   * The chance that this true share is greater than another by more than a number; the two are
   * known apart from each other.
   *
   * @param by from -1 to 1
   */
  public double above(OneShare other, double by) {
    if (!(by >= -1 && by <= 1)) {
      throw new IllegalArgumentException("a difference of shares lies in -1 to 1, was " + by);
    }
    BetaDistribution own = law();
    BetaDistribution theirs = other.law();
    double spread = REACH * Math.sqrt(theirs.getVariance());
    double from = Math.max(0, theirs.getMean() - spread);
    double to = Math.min(1, theirs.getMean() + spread);
    // Below -by this share is always the greater, above 1 - by never.
    double bend = Math.max(from, Math.min(to, -by));
    double end = Math.max(bend, Math.min(to, 1 - by));
    double sum = theirs.probability(from, bend);
    double half = (end - bend) / PIECES / 2;
    for (int piece = 0; piece < PIECES && half > 0; piece++) {
      double middle = bend + (2 * piece + 1) * half;
      sum +=
          half
              * PIECE.integrate(
                  z -> {
                    double p = middle + half * z;
                    return theirs.density(p) * own.survivalProbability(p + by);
                  });
    }
    return Math.min(1, sum);
  }
}
