package gapwise.synthesis.agreement;

import java.util.List;

/**
 * Between which values most differences of two raters lie: Bland and Altman, Lancet 1986;327:307.
 *
 * @param mean of the differences, first rater less second
 * @param sd their standard deviation
 * @param lower mean less the multiple of sd
 * @param upper mean plus the multiple of sd
 */
public record LimitsOfAgreement(double mean, double sd, double lower, double upper) {

  /**
   * From differences.
   *
   * @param differences at least two
   * @param multiplier 1.96 by convention
   */
  public static LimitsOfAgreement of(List<Double> differences, double multiplier) {
    if (differences.size() < 2) {
      throw new IllegalArgumentException("limits need two differences");
    }
    double mean = 0;
    for (double difference : differences) {
      mean += difference / differences.size();
    }
    double squares = 0;
    for (double difference : differences) {
      squares += (difference - mean) * (difference - mean);
    }
    double sd = Math.sqrt(squares / (differences.size() - 1));
    return new LimitsOfAgreement(mean, sd, mean - multiplier * sd, mean + multiplier * sd);
  }
}
