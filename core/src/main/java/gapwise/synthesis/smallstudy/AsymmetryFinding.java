package gapwise.synthesis.smallstudy;

import gapwise.problem.Problem;
import gapwise.synthesis.pooling.PooledMean;
import java.util.List;
import java.util.OptionalDouble;

/** What a test for small-study effects found, with a sentence that claims no more than it may. */
public sealed interface AsymmetryFinding {
  /**
   * A straight line by least squares, residual scale estimated.
   *
   * @param intercept at 0 of what the line runs over
   * @param slope per unit of it
   * @param standardError of the coefficient that is tested
   * @param statistic that coefficient over its standard error
   * @param degreesOfFreedom of Student's t
   * @param pValue two-sided
   * @param sentence for people
   */
  record Line(
      double intercept,
      double slope,
      double standardError,
      double statistic,
      int degreesOfFreedom,
      double pValue,
      String sentence)
      implements AsymmetryFinding {}

  /**
   * A straight line over the standard error with a variance between studies about it.
   *
   * @param slope per unit of standard error
   * @param standardError of the slope
   * @param statistic slope over standard error, normal
   * @param pValue two-sided
   * @param limit effect at a standard error of 0
   * @param tauSquared residual variance between studies
   * @param sentence for people
   */
  record RandomLine(
      double slope,
      double standardError,
      double statistic,
      double pValue,
      double limit,
      double tauSquared,
      String sentence)
      implements AsymmetryFinding {}

  /**
   * A rank correlation.
   *
   * @param score pairs in the same order less pairs in opposite order
   * @param kendallTau tau-b
   * @param statistic score over its standard deviation, ties allowed for, no continuity correction
   * @param pValue two-sided, normal
   * @param continuityStatistic with the score drawn towards 0 by 1
   * @param exactPValue from the exact distribution; empty with ties or from 50 studies on
   * @param sentence for people
   */
  record Ranks(
      long score,
      double kendallTau,
      double statistic,
      double pValue,
      double continuityStatistic,
      OptionalDouble exactPValue,
      String sentence)
      implements AsymmetryFinding {}

  /**
   * Studies imagined so that the funnel is even.
   *
   * @param settings how it was done
   * @param filled the imagined studies, the one farthest out first
   * @param mean with them
   * @param tauSquared with them; empty for a common effect
   * @param settled whether the number of studies stopped changing
   * @param sentence for people
   */
  record Filled(
      TrimAndFill settings,
      List<Imagined> filled,
      PooledMean mean,
      OptionalDouble tauSquared,
      boolean settled,
      String sentence)
      implements AsymmetryFinding {
    public Filled {
      filled = List.copyOf(filled);
    }
  }

  /**
   * An imagined study.
   *
   * @param mirrors place of the study it mirrors, from 0
   * @param effect its effect
   * @param variance that of the study it mirrors
   */
  record Imagined(int mirrors, double effect, double variance) {}

  /**
   * The test is not made.
   *
   * @param refusal the reason
   */
  record Refused(Refusal refusal) implements AsymmetryFinding {
    /** Code and reason in words. */
    public Problem why() {
      return refusal.problem();
    }
  }
}
