package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.evidence.unit.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A quantity as a group of patients is reported: any of the usual numbers, in one unit, as printed.
 *
 * @param unit the unit as printed
 * @param n how many the numbers describe, at least 1
 * @param mean arithmetic mean
 * @param standardDeviation 0 or more
 * @param standardError of the mean, 0 or more
 * @param lowerLimit lower 95 % confidence limit of the mean
 * @param upperLimit upper 95 % confidence limit of the mean
 * @param median median
 * @param lowerQuartile first quartile
 * @param upperQuartile third quartile
 * @param minimum smallest value
 * @param maximum largest value
 * @param unstatedSpread what stands in brackets or after a plus-minus sign without saying what it
 *     is
 * @param words the words as reported
 */
public record QuantitySummary(
    Unit unit,
    OptionalInt n,
    OptionalDouble mean,
    OptionalDouble standardDeviation,
    OptionalDouble standardError,
    OptionalDouble lowerLimit,
    OptionalDouble upperLimit,
    OptionalDouble median,
    OptionalDouble lowerQuartile,
    OptionalDouble upperQuartile,
    OptionalDouble minimum,
    OptionalDouble maximum,
    Optional<UnstatedSpread> unstatedSpread,
    Optional<String> words) {

  public QuantitySummary {
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(n, "n");
    Objects.requireNonNull(mean, "mean");
    Objects.requireNonNull(standardDeviation, "standardDeviation");
    Objects.requireNonNull(standardError, "standardError");
    Objects.requireNonNull(lowerLimit, "lowerLimit");
    Objects.requireNonNull(upperLimit, "upperLimit");
    Objects.requireNonNull(median, "median");
    Objects.requireNonNull(lowerQuartile, "lowerQuartile");
    Objects.requireNonNull(upperQuartile, "upperQuartile");
    Objects.requireNonNull(minimum, "minimum");
    Objects.requireNonNull(maximum, "maximum");
    Objects.requireNonNull(unstatedSpread, "unstatedSpread");
    Objects.requireNonNull(words, "words");
    requireFinite(
        mean,
        standardDeviation,
        standardError,
        lowerLimit,
        upperLimit,
        median,
        lowerQuartile,
        upperQuartile,
        minimum,
        maximum);
    requireNotNegative("standard deviation", standardDeviation);
    requireNotNegative("standard error", standardError);
    if (n.isPresent() && n.getAsInt() < 1) {
      throw new IllegalArgumentException("n must be at least 1, was " + n.getAsInt());
    }
    requireOrder("lower limit", lowerLimit, "upper limit", upperLimit);
    requireOrder("minimum", minimum, "first quartile", lowerQuartile);
    requireOrder("minimum", minimum, "median", median);
    requireOrder("minimum", minimum, "mean", mean);
    requireOrder("minimum", minimum, "maximum", maximum);
    requireOrder("first quartile", lowerQuartile, "median", median);
    requireOrder("first quartile", lowerQuartile, "third quartile", upperQuartile);
    requireOrder("median", median, "third quartile", upperQuartile);
    requireOrder("median", median, "maximum", maximum);
    requireOrder("third quartile", upperQuartile, "maximum", maximum);
    requireOrder("mean", mean, "maximum", maximum);
  }

  private static void requireFinite(OptionalDouble... values) {
    for (OptionalDouble value : values) {
      if (value.isPresent() && !Double.isFinite(value.getAsDouble())) {
        throw new IllegalArgumentException("a number must be finite, was " + value.getAsDouble());
      }
    }
  }

  private static void requireNotNegative(String name, OptionalDouble value) {
    if (value.isPresent() && value.getAsDouble() < 0) {
      throw new IllegalArgumentException(
          name + " must not be negative, was " + value.getAsDouble());
    }
  }

  private static void requireOrder(
      String lowName, OptionalDouble low, String highName, OptionalDouble high) {
    if (low.isPresent() && high.isPresent() && low.getAsDouble() > high.getAsDouble()) {
      throw new IllegalArgumentException(
          lowName
              + " "
              + low.getAsDouble()
              + " is larger than "
              + highName
              + " "
              + high.getAsDouble());
    }
  }

  /** True when no number at all is known. */
  @JsonIgnore
  public boolean isEmpty() {
    return mean.isEmpty()
        && standardDeviation.isEmpty()
        && standardError.isEmpty()
        && lowerLimit.isEmpty()
        && upperLimit.isEmpty()
        && median.isEmpty()
        && lowerQuartile.isEmpty()
        && upperQuartile.isEmpty()
        && minimum.isEmpty()
        && maximum.isEmpty()
        && unstatedSpread.isEmpty();
  }

  /** The mean if there is one, else the median, in the unit reported. */
  @JsonIgnore
  public OptionalDouble centre() {
    return mean.isPresent() ? mean : median;
  }

  /**
   * The same numbers in another unit.
   *
   * @throws IllegalArgumentException when the dimensions differ
   */
  public QuantitySummary in(Unit other) {
    if (other == unit) {
      return this;
    }
    return new QuantitySummary(
        other,
        n,
        carried(other, mean),
        carried(other, standardDeviation),
        carried(other, standardError),
        carried(other, lowerLimit),
        carried(other, upperLimit),
        carried(other, median),
        carried(other, lowerQuartile),
        carried(other, upperQuartile),
        carried(other, minimum),
        carried(other, maximum),
        unstatedSpread.map(spread -> spread.in(unit, other)),
        words);
  }

  private OptionalDouble carried(Unit other, OptionalDouble value) {
    return value.isPresent()
        ? OptionalDouble.of(unit.to(other, value.getAsDouble()))
        : OptionalDouble.empty();
  }

  /**
   * The numbers of a list of values, with quartiles by linear interpolation between order
   * statistics (Hyndman &amp; Fan, Am Stat 1996;50:361, definition 7).
   *
   * @param values at least one, finite
   */
  public static QuantitySummary of(Unit unit, List<Double> values) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    if (sorted.length == 0) {
      throw new IllegalArgumentException("a summary needs at least one value");
    }
    double mean = Arrays.stream(sorted).average().orElseThrow();
    QuantitySummaryBuilder summary =
        with(unit)
            .n(sorted.length)
            .mean(Math.min(Math.max(mean, sorted[0]), sorted[sorted.length - 1]))
            .median(quantile(sorted, 0.5))
            .lowerQuartile(quantile(sorted, 0.25))
            .upperQuartile(quantile(sorted, 0.75))
            .minimum(sorted[0])
            .maximum(sorted[sorted.length - 1]);
    if (sorted.length > 1) {
      double squares = Arrays.stream(sorted).map(x -> (x - mean) * (x - mean)).sum();
      summary.standardDeviation(Math.sqrt(squares / (sorted.length - 1)));
    }
    return summary.build();
  }

  private static double quantile(double[] sorted, double share) {
    double position = share * (sorted.length - 1);
    int below = (int) Math.floor(position);
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
  }

  /** Starts a value of which only the given parts are known. */
  public static QuantitySummaryBuilder with(Unit unit) {
    return new QuantitySummaryBuilder(unit);
  }
}
