package gapwise.coverage;

import gapwise.effect.ArmCounts;
import java.util.List;

/**
 * One replicate of series whose true rates have a beta distribution.
 *
 * @param mean true rate over all conceivable series
 * @param series what is pooled
 * @param further true rate of one more series
 */
record DrawnBetaShares(double mean, List<ArmCounts> series, double further) implements Drawn {
  @Override
  public double truth(Target target) {
    return switch (target) {
      case AVERAGE -> mean;
      case FURTHER -> further;
      case MIDDLE -> throw new IllegalArgumentException("the middle is not asked for");
    };
  }
}
