package gapwise.synthesis.likelihood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Where a {@link StudyConvolution} has the likelihoods of its study from. */
interface StudyLattices {
  /**
   * A lattice at least so fine; half of a step that was given gives one of half that step.
   *
   * @param step above 0
   * @param near a true value near which points will be asked for
   */
  Lattice of(double step, double near);

  /** Each a lattice of its own, of just the step that is asked for. */
  static StudyLattices fresh(StudyLikelihoods studies, int study) {
    return (step, near) -> new Lattice(studies, study, step, Math.round(near / step));
  }

  /**
   * The last few lattices, so that one spread has the likelihoods that another worked out: steps
   * are thirds of an octave apart, since they are the same for near spreads then.
   */
  static StudyLattices shared(StudyLikelihoods studies, int study) {
    return new Shared(studies, study);
  }

  /** See {@link #shared}. */
  final class Shared implements StudyLattices {
    /** Spreads are asked for in order, so that those long gone are not asked for again. */
    private static final int MOST = 4;

    private static final int THIRDS = 3;
    private static final double[] THIRD = {1, Math.pow(2, -1 / 3.0), Math.pow(2, -2 / 3.0)};

    private final StudyLikelihoods studies;
    private final int study;
    private final List<Lattice> last = new ArrayList<>(MOST);

    Shared(StudyLikelihoods studies, int study) {
      this.studies = studies;
      this.study = study;
    }

    @Override
    public Lattice of(double wanted, double near) {
      double step = rounded(wanted);
      for (Lattice one : last) {
        if (one.step() == step) {
          return one;
        }
      }
      Lattice made = new Lattice(studies, study, step, Math.round(near / step));
      if (last.size() == MOST) {
        last.remove(0);
      }
      last.add(made);
      return made;
    }

    /** The widest of the steps that is not above the one wanted. */
    private static double rounded(double wanted) {
      int octave = Math.getExponent(wanted) + 1;
      int third = 0;
      while (step(octave, third) > wanted) {
        third++;
      }
      return step(octave, third);
    }

    /** By a power of two times one of three numbers, so that half a step is one exactly. */
    private static double step(int octave, int third) {
      return Math.scalb(THIRD[third % THIRDS], octave - third / THIRDS);
    }
  }

  /**
   * Likelihoods of one study at the whole multiples of a step, worked out when they are first asked
   * for. They are kept over that at one place, the reference, so that they stay within the range of
   * doubles. Not for use by several threads at once.
   */
  final class Lattice {
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
    Lattice(StudyLikelihoods studies, int study, double step, long near) {
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
}
