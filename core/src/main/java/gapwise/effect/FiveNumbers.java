package gapwise.effect;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A median with what is reported beside it: range, quartiles or both.
 *
 * @param n patients, at least 1
 * @param median in the unit reported
 * @param minimum with {@code maximum}, or both empty
 * @param firstQuartile with {@code thirdQuartile}, or both empty
 */
public record FiveNumbers(
    double n,
    OptionalDouble minimum,
    OptionalDouble firstQuartile,
    double median,
    OptionalDouble thirdQuartile,
    OptionalDouble maximum) {

  /** What is reported beside the median. */
  public enum Beside {
    /** Smallest and largest value. */
    RANGE,
    /** First and third quartile. */
    QUARTILES,
    /** Range and quartiles. */
    BOTH
  }

  public FiveNumbers {
    if (minimum.isPresent() != maximum.isPresent()
        || firstQuartile.isPresent() != thirdQuartile.isPresent()
        || (minimum.isEmpty() && firstQuartile.isEmpty())) {
      throw new IllegalArgumentException("a median needs a range or quartiles beside it");
    }
  }

  /**
   * Reads the five numbers of a group. Half a range or half the quartiles count as not reported.
   *
   * @return empty if there is no median with a range or quartiles, or they are out of order, which
   *     has then been noted
   */
  public static Optional<FiveNumbers> read(Reported row, String group, double n) {
    OptionalDouble median = row.number(Reported.role(group, "median"));
    OptionalDouble min = row.number(Reported.role(group, "min"));
    OptionalDouble max = row.number(Reported.role(group, "max"));
    OptionalDouble q1 = row.number(Reported.role(group, "q1"));
    OptionalDouble q3 = row.number(Reported.role(group, "q3"));
    boolean range = min.isPresent() && max.isPresent();
    boolean quartiles = q1.isPresent() && q3.isPresent();
    if (median.isEmpty() || !(range || quartiles)) {
      return Optional.empty();
    }
    double last = Double.NEGATIVE_INFINITY;
    for (OptionalDouble value : new OptionalDouble[] {min, q1, median, q3, max}) {
      if (value.orElse(last) < last) {
        row.wrong(
            Reported.role(group, "median"),
            "out-of-order",
            "found "
                + value.getAsDouble()
                + " after "
                + last
                + ", expected minimum, first quartile, median, third quartile and maximum to rise;"
                + " correct them");
        return Optional.empty();
      }
      last = value.orElse(last);
    }
    OptionalDouble none = OptionalDouble.empty();
    return Optional.of(
        new FiveNumbers(
            n,
            range ? min : none,
            quartiles ? q1 : none,
            median.getAsDouble(),
            quartiles ? q3 : none,
            range ? max : none));
  }

  /** What is reported beside the median. */
  public Beside beside() {
    if (minimum.isEmpty()) {
      return Beside.QUARTILES;
    }
    return firstQuartile.isEmpty() ? Beside.RANGE : Beside.BOTH;
  }

  /**
   * Whether the median lies too far to one side for values near normal, so that a mean and standard
   * deviation worked out from it mislead; false with fewer than five patients.
   */
  public boolean looksSkewed() {
    return Skewness.looksSkewed(this);
  }

  double min() {
    return minimum.getAsDouble();
  }

  double q1() {
    return firstQuartile.getAsDouble();
  }

  double q3() {
    return thirdQuartile.getAsDouble();
  }

  double max() {
    return maximum.getAsDouble();
  }
}
