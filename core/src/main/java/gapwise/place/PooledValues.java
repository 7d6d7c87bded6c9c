package gapwise.place;

import gapwise.analysis.result.Result;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.Optional;

/** What a pooled value shows in a figure. */
final class PooledValues {
  /** Fewer series show no range for a new one (common practice, no source). */
  private static final int FEWEST_FOR_RANGE = 5;

  private PooledValues() {}

  /** Empty where limits are too far apart for a number, as two series can have them. */
  static Optional<Estimate> average(Result.Summary summary) {
    Result.Shown shown = summary.shown();
    return Double.isFinite(shown.lower()) && Double.isFinite(shown.upper())
        ? Optional.of(Estimate.of(shown.estimate(), shown.lower(), shown.upper()))
        : Optional.empty();
  }

  static Optional<Limits> prediction(Result.Summary summary, int series) {
    Result.Shown shown = summary.shown();
    if (series < FEWEST_FOR_RANGE
        || shown.predictionLower().isEmpty()
        || shown.predictionUpper().isEmpty()) {
      return Optional.empty();
    }
    double lower = shown.predictionLower().getAsDouble();
    double upper = shown.predictionUpper().getAsDouble();
    return Double.isFinite(lower) && Double.isFinite(upper)
        ? Optional.of(new Limits(lower, upper))
        : Optional.empty();
  }
}
