package gapwise.coverage;

import gapwise.effect.StudyData;
import java.util.List;

/**
 * One replicate of studies whose true values are normal on the analysis scale.
 *
 * @param middle true value that half of all studies exceed, on the analysis scale
 * @param tau true standard deviation of the true values
 * @param series what is pooled
 * @param further true value of one more study
 */
record DrawnEffects<S extends StudyData>(double middle, double tau, List<S> series, double further)
    implements Drawn {

  /** The average on the log scale; where effects are no logarithms none is asked for. */
  @Override
  public double truth(Target target) {
    return switch (target) {
      case AVERAGE -> middle + tau * tau / 2;
      case MIDDLE -> middle;
      case FURTHER -> further;
    };
  }
}
