package gapwise.synthesis.likelihood;

import java.util.Arrays;

/**
 * Likelihoods of one study at the whole multiples of a step, worked out when they are first asked
 * for. They are kept over that at one place, the reference, so that they stay within the range of
 * doubles. Not for use by several threads at once.
 */
final class LikelihoodLattice {
  /** Points that are kept; beyond them each is worked out anew. */
  private static final int KEPT = 256;

  private final StudyLikelihoods studies;
  private final int study;
  private final double step;
  private final double[] d = new double[StudyLikelihoods.LENGTH];

  /** NaN where not yet worked out. */
  private final double[] kept = new double[KEPT];

  private long first;
  private double reference;

  /**
   * @param step above 0
   * @param near a multiple near which points will be asked for
   */
  LikelihoodLattice(StudyLikelihoods studies, int study, double step, long near) {
    this.studies = studies;
    this.study = study;
    this.step = step;
    moveTo(near);
  }

  double step() {
    return step;
  }

  /** Logarithm of what likelihoods are over. */
  double reference() {
    return reference;
  }

  /** The likelihood at a multiple of the step, over e^reference. */
  double at(long m) {
    long place = m - first;
    if (place < 0 || place >= KEPT) {
      return Math.exp(log(m) - reference);
    }
    double known = kept[(int) place];
    if (Double.isNaN(known)) {
      known = Math.exp(log(m) - reference);
      kept[(int) place] = known;
    }
    return known;
  }

  /** Its logarithm, as it is. */
  double log(long m) {
    studies.second(study, m * step, 0, d);
    return d[StudyLikelihoods.VALUE];
  }

  /** Whether a multiple is among those that are kept. */
  boolean keeps(long m) {
    return m >= first && m < first + KEPT;
  }

  /** Keeps likelihoods about another multiple from now on, over that at it. */
  void moveTo(long m) {
    Arrays.fill(kept, Double.NaN);
    first = m - KEPT / 2;
    reference = log(m);
  }
}
