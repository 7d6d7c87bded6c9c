package gapwise.evidence;

import gapwise.evidence.unit.Unit;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Collects the numbers of a {@link QuantitySummary} that a paper gives. Not thread-safe. */
public final class QuantitySummaryBuilder {
  private final Unit unit;
  private OptionalInt n = OptionalInt.empty();
  private OptionalDouble mean = OptionalDouble.empty();
  private OptionalDouble standardDeviation = OptionalDouble.empty();
  private OptionalDouble standardError = OptionalDouble.empty();
  private OptionalDouble lowerLimit = OptionalDouble.empty();
  private OptionalDouble upperLimit = OptionalDouble.empty();
  private OptionalDouble median = OptionalDouble.empty();
  private OptionalDouble lowerQuartile = OptionalDouble.empty();
  private OptionalDouble upperQuartile = OptionalDouble.empty();
  private OptionalDouble minimum = OptionalDouble.empty();
  private OptionalDouble maximum = OptionalDouble.empty();
  private Optional<UnstatedSpread> unstatedSpread = Optional.empty();
  private Optional<String> words = Optional.empty();

  QuantitySummaryBuilder(Unit unit) {
    this.unit = unit;
  }

  public QuantitySummaryBuilder n(int value) {
    n = OptionalInt.of(value);
    return this;
  }

  public QuantitySummaryBuilder mean(double value) {
    mean = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder standardDeviation(double value) {
    standardDeviation = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder standardError(double value) {
    standardError = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder lowerLimit(double value) {
    lowerLimit = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder upperLimit(double value) {
    upperLimit = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder median(double value) {
    median = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder lowerQuartile(double value) {
    lowerQuartile = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder upperQuartile(double value) {
    upperQuartile = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder minimum(double value) {
    minimum = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder maximum(double value) {
    maximum = OptionalDouble.of(value);
    return this;
  }

  public QuantitySummaryBuilder unstatedSpread(UnstatedSpread value) {
    unstatedSpread = Optional.of(value);
    return this;
  }

  public QuantitySummaryBuilder words(String value) {
    words = Optional.of(value);
    return this;
  }

  /** The value, checked. */
  public QuantitySummary build() {
    return new QuantitySummary(
        unit,
        n,
        mean,
        standardDeviation,
        standardError,
        lowerLimit,
        upperLimit,
        median,
        lowerQuartile,
        upperQuartile,
        minimum,
        maximum,
        unstatedSpread,
        words);
  }
}
