package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Unit;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    summary.mean().ifPresent(mean -> parts.add(say("wording.mean", value(mean))));
    summary.median().ifPresent(median -> parts.add(say("wording.median", value(median))));
    summary.standardDeviation().ifPresent(sd -> parts.add(say("wording.deviation", value(sd))));
    summary.standardError().ifPresent(error -> parts.add(say("wording.error", value(error))));
    limits().ifPresent(parts::add);
    quartiles().ifPresent(parts::add);
    range().ifPresent(parts::add);
    summary.unstatedSpread().ifPresent(spread -> parts.add(unstated(spread)));
    if (parts.isEmpty()) {
      return say("wording.no-numbers");
    }
    String joined = String.join(", ", parts);
    return unit == Unit.POINTS || unit == Unit.CURRENCY
        ? joined
        : say("wording.in-unit", Map.of("numbers", joined, "unit", unit.symbol()));
  }

  private Optional<String> limits() {
    Map<String, String> ends = ends(summary.lowerLimit(), summary.upperLimit());
    if (ends.size() == 2) {
      return Optional.of(say("wording.limits", ends));
    }
    return ends.isEmpty()
        ? Optional.empty()
        : Optional.of(
            say(ends.containsKey("from") ? "wording.limits-from" : "wording.limits-up-to", ends));
  }

  private Optional<String> quartiles() {
    Map<String, String> ends = ends(summary.lowerQuartile(), summary.upperQuartile());
    if (ends.size() == 2) {
      return Optional.of(say("wording.quartiles", ends));
    }
    return ends.isEmpty()
        ? Optional.empty()
        : Optional.of(
            say(
                ends.containsKey("from") ? "wording.quartiles-from" : "wording.quartiles-up-to",
                ends));
  }

  private Optional<String> range() {
    Map<String, String> ends = ends(summary.minimum(), summary.maximum());
    if (ends.size() == 2) {
      return Optional.of(say("wording.range", ends));
    }
    return ends.isEmpty()
        ? Optional.empty()
        : Optional.of(
            say(ends.containsKey("from") ? "wording.range-from" : "wording.range-up-to", ends));
  }

  private String unstated(UnstatedSpread spread) {
    return spread.second().isPresent()
        ? say(
            "wording.unstated-ends",
            Map.of("from", number(spread.first()), "to", number(spread.second().getAsDouble())))
        : say("wording.unstated-spread", Map.of("spread", number(spread.first())));
  }

  private Map<String, String> value(double value) {
    return Map.of("value", number(value));
  }

  private Map<String, String> ends(OptionalDouble lower, OptionalDouble upper) {
    Map<String, String> ends = new HashMap<>();
    lower.ifPresent(value -> ends.put("from", number(value)));
    upper.ifPresent(value -> ends.put("to", number(value)));
    return ends;
  }

  /** As papers print it: a whole number has no fraction. */
  private String number(double value) {
    return Shown.reported(Quantity.mean(unit.symbol()), value);
  }
}
