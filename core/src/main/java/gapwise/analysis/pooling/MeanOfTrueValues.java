package gapwise.analysis.pooling;

import gapwise.analysis.result.Result;
import gapwise.synthesis.likelihood.MeanOverStudies;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;

/**
 * From the centre of a normal distribution on the analysis scale to the mean of what people read,
 * where the scale bends and the two differ: shares on the logit scale, rates and means on the log
 * scale. A mean of ratios would hang on which group comes first, so there is none.
 */
public final class MeanOfTrueValues {
  private final DoubleBinaryOperator mean;

  private MeanOfTrueValues(DoubleBinaryOperator mean) {
    this.mean = mean;
  }

  /** The way for a measure on a scale; empty where centre and mean are one, or neither is read. */
  public static Optional<MeanOfTrueValues> of(String measure, String scale) {
    return switch (measure + " " + scale) {
      case "proportion logit" -> Optional.of(new MeanOfTrueValues(MeanOverStudies::proportion));
      case "incidence-rate log", "mean log" ->
          Optional.of(new MeanOfTrueValues(MeanOverStudies::rate));
      default -> Optional.empty();
    };
  }

  /**
   * Mean and limits. The limits are those of the centre, each carried to the mean of a distribution
   * about it of the same spread.
   *
   * @param tauSquared variance of the true values, 0 or more
   */
  public Result.Estimate of(double centre, double lower, double upper, double tauSquared) {
    double tau = Math.sqrt(tauSquared);
    return new Result.Estimate(
        mean.applyAsDouble(centre, tau),
        mean.applyAsDouble(lower, tau),
        mean.applyAsDouble(upper, tau));
  }
}
