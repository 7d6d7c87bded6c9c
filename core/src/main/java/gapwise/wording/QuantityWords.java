package gapwise.wording;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Unit;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A quantity of a group of patients in words, keeping mean and median apart. */
public final class QuantityWords {
  private final QuantitySummary summary;
  private final Unit unit;

  private QuantityWords(QuantitySummary summary, Unit unit) {
    this.summary = summary.unit().dimension() == unit.dimension() ? summary.in(unit) : summary;
    this.unit = this.summary.unit();
  }

  /** In the unit that the paper prints. */
  public static String asReported(QuantitySummary summary) {
    return new QuantityWords(summary, summary.unit()).words();
  }

  /** In another unit of the same dimension. */
  public static String in(QuantitySummary summary, Unit unit) {
    return new QuantityWords(summary, unit).words();
  }

  private String words() {
    List<String> parts = new ArrayList<>();
    if (summary.mean().isPresent()) {
      parts.add("mean " + number(summary.mean()));
    }
    if (summary.median().isPresent()) {
      parts.add("median " + number(summary.median()));
    }
    add(parts, "SD ", summary.standardDeviation());
    add(parts, "standard error ", summary.standardError());
    between(parts, "95 % limits ", summary.lowerLimit(), summary.upperLimit());
    between(parts, "middle half ", summary.lowerQuartile(), summary.upperQuartile());
    between(parts, "", summary.minimum(), summary.maximum());
    summary.unstatedSpread().ifPresent(spread -> parts.add(unstated(spread)));
    if (parts.isEmpty()) {
      return "no numbers";
    }
    String joined = String.join(", ", parts);
    return joined + (unit == Unit.POINTS || unit == Unit.CURRENCY ? "" : " " + unit.symbol());
  }

  private String unstated(UnstatedSpread spread) {
    String numbers =
        spread.second().isPresent()
            ? "(" + number(spread.first()) + " to " + number(spread.second().getAsDouble()) + ")"
            : "± " + number(spread.first());
    return numbers + ", the paper does not say of what kind";
  }

  private void add(List<String> parts, String name, OptionalDouble value) {
    if (value.isPresent()) {
      parts.add(name + number(value));
    }
  }

  private void between(
      List<String> parts, String name, OptionalDouble lower, OptionalDouble upper) {
    if (lower.isPresent() && upper.isPresent()) {
      parts.add(name + number(lower) + " to " + number(upper));
    } else {
      add(parts, name + "from ", lower);
      add(parts, name + "up to ", upper);
    }
  }

  private String number(OptionalDouble value) {
    return number(value.orElseThrow());
  }

  private String number(double value) {
    return Shown.value(Quantity.mean(unit.symbol()), value);
  }
}
