package gapwise.selection;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.TestedMeans;
import gapwise.evidence.unit.Unit;
import java.util.Optional;
import java.util.OptionalDouble;

/** From what the standard deviation of a row comes, by what stands beside its mean or median. */
public enum SpreadBasis {
  /** The paper prints it. */
  PRINTED,
  /** From the standard error of the mean, without any assumption. */
  STANDARD_ERROR,
  /** From the 95 % interval of the mean, taken to be by Student's t. */
  LIMITS,
  /** From the middle half, as if values were near normal. */
  QUARTILES,
  /** From smallest and largest value, as if values were near normal. */
  RANGE,
  /** The mean of what middle half and range give. */
  QUARTILES_AND_RANGE,
  /** From a t test of its mean against that of another arm, as if both had the same. */
  TEST,
  /** From nothing: none is printed and none can be worked out. */
  NONE;

  /**
   * The first that is there: printed, standard error, interval, then quartiles and range. An
   * interval, middle half or range without width, which would claim that all patients are alike,
   * gives none; neither does a median on its own terms a standard error or an interval, which are
   * those of a mean.
   */
  public static SpreadBasis of(QuantitySummary summary, Conversions conversions) {
    if (summary.standardDeviation().isPresent()) {
      return PRINTED;
    }
    if (conversions == Conversions.NONE) {
      return NONE;
    }
    boolean mean = summary.mean().isPresent();
    if (mean && summary.standardError().isPresent()) {
      return STANDARD_ERROR;
    }
    if (mean && widens(summary.lowerLimit(), summary.upperLimit())) {
      return LIMITS;
    }
    boolean quartiles = widens(summary.lowerQuartile(), summary.upperQuartile());
    boolean range = widens(summary.minimum(), summary.maximum());
    if (quartiles) {
      return range ? QUARTILES_AND_RANGE : QUARTILES;
    }
    return range ? RANGE : NONE;
  }

  /**
   * The same of a row, which a test of its mean against another arm's gives one where all fails.
   */
  public static SpreadBasis of(SelectedRow row, QuantitySummary summary, Conversions conversions) {
    SpreadBasis alone = of(summary, conversions);
    boolean open = alone == NONE && conversions != Conversions.NONE && summary.mean().isPresent();
    return open && tested(row, summary.unit()).isPresent() ? TEST : alone;
  }

  /** The t test of a row's mean against that of another arm; empty for most. */
  public static Optional<TestedMeans> tested(SelectedRow row, Unit unit) {
    return row.report().flatMap(own -> TestedMeans.of(row.study(), own, row.speaksOf(), unit));
  }

  /** Whether it is worked out from what is printed instead. */
  public boolean isWorkedOut() {
    return this != PRINTED && this != NONE;
  }

  private static boolean widens(OptionalDouble lower, OptionalDouble upper) {
    return lower.isPresent() && upper.isPresent() && lower.getAsDouble() < upper.getAsDouble();
  }
}
