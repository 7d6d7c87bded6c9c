package gapwise.demonstration;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.OptionalDouble;

/** The numbers of a quantity that a paper chooses to print, rounded as papers round. */
enum SummaryStyle {
  MEAN_AND_DEVIATION,
  MEAN_ALONE,
  MEAN_AND_RANGE,
  MEAN_AND_QUARTILES,
  MEAN_AND_ERROR,
  MEAN_AND_LIMITS,
  MEDIAN_ALONE,
  MEDIAN_AND_QUARTILES,
  MEDIAN_AND_RANGE,
  RANGE_ALONE,
  PLUS_MINUS_UNEXPLAINED,
  BRACKETS_UNEXPLAINED,
  CENTRE_AND_BRACKETS_UNEXPLAINED;

  /** Quantile of the normal law for 95 % limits; what the invented authors would have used. */
  private static final double NORMAL_LIMIT = 1.96;

  /**
   * Prints values.
   *
   * @param unit of the values and of the print
   * @param decimals to which all numbers are rounded
   * @param values at least one
   */
  QuantitySummary print(Unit unit, int decimals, List<Double> values) {
    QuantitySummary full = QuantitySummary.of(unit, values);
    QuantitySummaryBuilder print = QuantitySummary.with(unit).n(values.size());
    double mean = rounded(full.mean(), decimals);
    double median = rounded(full.median(), decimals);
    double minimum = rounded(full.minimum(), decimals);
    double maximum = rounded(full.maximum(), decimals);
    double deviation = rounded(full.standardDeviation(), decimals);
    double error = full.standardDeviation().orElse(0) / Math.sqrt(values.size());
    switch (this) {
      case MEAN_AND_DEVIATION -> print.mean(mean).standardDeviation(deviation);
      case MEAN_ALONE -> print.mean(mean);
      case MEAN_AND_RANGE -> print.mean(mean).minimum(minimum).maximum(maximum);
      case MEAN_AND_QUARTILES ->
          print
              .mean(mean)
              .lowerQuartile(rounded(full.lowerQuartile(), decimals))
              .upperQuartile(rounded(full.upperQuartile(), decimals));
      case MEAN_AND_ERROR -> print.mean(mean).standardError(rounded(error, decimals + 1));
      case MEAN_AND_LIMITS ->
          print
              .mean(mean)
              .lowerLimit(rounded(mean - NORMAL_LIMIT * error, decimals))
              .upperLimit(rounded(mean + NORMAL_LIMIT * error, decimals));
      case MEDIAN_ALONE -> print.median(median);
      case MEDIAN_AND_QUARTILES ->
          print
              .median(median)
              .lowerQuartile(rounded(full.lowerQuartile(), decimals))
              .upperQuartile(rounded(full.upperQuartile(), decimals));
      case MEDIAN_AND_RANGE -> print.median(median).minimum(minimum).maximum(maximum);
      case RANGE_ALONE -> print.minimum(minimum).maximum(maximum);
      case PLUS_MINUS_UNEXPLAINED ->
          print
              .median(median)
              .unstatedSpread(new UnstatedSpread(deviation, OptionalDouble.empty()))
              .words("median " + text(median, decimals) + " ± " + text(deviation, decimals));
      case CENTRE_AND_BRACKETS_UNEXPLAINED ->
          print
              .unstatedSpread(
                  new UnstatedSpread(
                      minimum, OptionalDouble.of(maximum), OptionalDouble.of(median)))
              .words(bracketed(median, minimum, maximum, decimals));
      case BRACKETS_UNEXPLAINED ->
          print
              .mean(mean)
              .unstatedSpread(new UnstatedSpread(minimum, OptionalDouble.of(maximum)))
              .words(bracketed(mean, minimum, maximum, decimals));
    }
    return print.build();
  }

  private static String bracketed(double centre, double low, double high, int decimals) {
    return text(centre, decimals) + " (" + text(low, decimals) + "-" + text(high, decimals) + ")";
  }

  private static double rounded(OptionalDouble value, int decimals) {
    return rounded(value.orElse(0), decimals);
  }

  static double rounded(double value, int decimals) {
    double scale = StrictMath.pow(10, decimals);
    return Math.round(value * scale) / scale;
  }

  static String text(double value, int decimals) {
    return decimals == 0 ? String.valueOf(Math.round(value)) : String.valueOf(value);
  }
}
