package gapwise.synthesis.likelihood;

import java.util.ArrayList;
import java.util.List;

/** Where a {@link StudyConvolution} has the likelihoods of its study from. */
interface StudyLattices {
  /**
   * A lattice at least so fine; half of a step that was given gives one of half that step.
   *
   * @param step above 0
   * @param near a true value near which points will be asked for
   */
  LikelihoodLattice of(double step, double near);

  /** Each a lattice of its own, of just the step that is asked for. */
  static StudyLattices fresh(StudyLikelihoods studies, int study) {
    return (step, near) -> new LikelihoodLattice(studies, study, step, Math.round(near / step));
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
    private final List<LikelihoodLattice> last = new ArrayList<>(MOST);

    Shared(StudyLikelihoods studies, int study) {
      this.studies = studies;
      this.study = study;
    }

    @Override
    public LikelihoodLattice of(double wanted, double near) {
      double step = rounded(wanted);
      for (LikelihoodLattice one : last) {
        if (one.step() == step) {
          return one;
        }
      }
      LikelihoodLattice made = new LikelihoodLattice(studies, study, step, Math.round(near / step));
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
}
