package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.synthesis.likelihood.MeanOverStudies;
import java.util.List;

/**
 * One replicate: what was drawn and what is true.
 *
 * @param median true rate of the middle series
 * @param tau true standard deviation of the logits
 * @param series what is pooled
 * @param others series of three other methods with the same tau
 * @param further true rate of one more series
 */
record DrawnShares(
    double median,
    double tau,
    List<ArmCounts> series,
    List<List<ArmCounts>> others,
    double further)
    implements Drawn {

  @Override
  public double truth(Target target) {
    return switch (target) {
      case AVERAGE -> MeanOverStudies.proportion(Math.log(median / (1 - median)), tau);
      case MIDDLE -> median;
      case FURTHER -> further;
    };
  }
}
