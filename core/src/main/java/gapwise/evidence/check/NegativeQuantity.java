package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.SummaryAt;
import gapwise.evidence.rule.SummaryRule;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;

/** A negative number where there can be none: times, lengths, indices, counts, ages. */
final class NegativeQuantity implements SummaryRule {
  @Override
  public void check(SummaryAt at, Findings findings) {
    if (!at.neverNegative()) {
      return;
    }
    numbers(at.summary())
        .forEach(
            (column, value) -> {
              if (value.isPresent() && value.getAsDouble() < 0) {
                findings.impossible(
                    at.at(column),
                    "negative",
                    "Found "
                        + Printed.number(value.getAsDouble())
                        + ", but this quantity cannot be negative. Check the sign.");
              }
            });
  }

  /** Numbers that a quantity takes, by column; limits of an interval may fall below 0. */
  static Map<String, OptionalDouble> numbers(QuantitySummary s) {
    Map<String, OptionalDouble> numbers = new LinkedHashMap<>();
    numbers.put("mean", s.mean());
    numbers.put("median", s.median());
    numbers.put("q1", s.lowerQuartile());
    numbers.put("q3", s.upperQuartile());
    numbers.put("min", s.minimum());
    numbers.put("max", s.maximum());
    return numbers;
  }
}
