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
import java.util.function.Function;

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

  /** The mean, else the median, else all there is, without what tells of its spread. */
  static String centre(QuantitySummary summary, Unit unit) {
    QuantityWords words = new QuantityWords(summary, unit);
    return words.single().or(words::centre).map(words::inUnit).orElseGet(words::words);
  }

  /** One account of the spread, the first that is known; empty where there is none. */
  static Optional<String> spread(QuantitySummary summary, Unit unit) {
    QuantityWords words = new QuantityWords(summary, unit);
    if (words.single().isPresent() || words.centre().isEmpty()) {
      return Optional.empty();
    }
    return words.deviation().or(words::quartiles).or(words::range).or(words::limits);
  }

  private Optional<String> centre() {
    return mean().or(this::median);
  }

  private Optional<String> mean() {
    return said(summary.mean(), value -> say("wording.mean", value));
  }

  private Optional<String> median() {
    return said(summary.median(), value -> say("wording.median", value));
  }

  private Optional<String> deviation() {
    return said(summary.standardDeviation(), value -> say("wording.deviation", value));
  }

  private Optional<String> said(OptionalDouble value, Function<Map<String, String>, String> say) {
    return value.isPresent()
        ? Optional.of(say.apply(value(value.getAsDouble())))
        : Optional.empty();
  }

  /** Of one patient, or of patients who are all alike, mean, median and range say the same. */
  private Optional<String> single() {
    OptionalDouble least = summary.minimum();
    return least.isPresent() && least.equals(summary.maximum())
        ? Optional.of(number(least.getAsDouble()))
        : Optional.empty();
  }

  private String words() {
    Optional<String> single = single();
    if (single.isPresent()) {
      return inUnit(single.get());
    }
    List<String> parts = new ArrayList<>();
    mean().ifPresent(parts::add);
    median().ifPresent(parts::add);
    deviation().ifPresent(parts::add);
    summary.standardError().ifPresent(error -> parts.add(say("wording.error", value(error))));
    limits().ifPresent(parts::add);
    quartiles().ifPresent(parts::add);
    range().ifPresent(parts::add);
    summary.unstatedSpread().ifPresent(spread -> parts.add(unstated(spread)));
    if (parts.isEmpty()) {
      return say("wording.no-numbers");
    }
    return inUnit(String.join(", ", parts));
  }

  private String inUnit(String numbers) {
    return unit == Unit.POINTS || unit == Unit.CURRENCY
        ? numbers
        : say("wording.in-unit", Map.of("numbers", numbers, "unit", unit.symbol()));
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
