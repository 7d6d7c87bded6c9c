package gapwise.selection;

import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Whether the numbers of a report can be used for an outcome as they are printed. */
sealed interface UsableValue {

  /** They can. */
  record Usable(ReportedValue value, boolean countedBack) implements UsableValue {}

  /** They cannot. */
  record Unusable(Reason reason) implements UsableValue {}

  static UsableValue of(Outcome outcome, ReportedValue value) {
    if (value instanceof ReportedValue.Statement) {
      return unusable("no-numbers", "The paper gives words and no numbers.");
    }
    if (value instanceof ReportedValue.Effect) {
      return unusable(
          "comparison-only", "The paper gives a difference between arms and no value of each arm.");
    }
    if (!fits(outcome.kind(), value)) {
      return unusable(
          "form-does-not-fit",
          "The numbers are of a form that " + outcome.label() + " does not have.");
    }
    if (value instanceof ReportedValue.Events events) {
      return ofCount(events.count());
    }
    if (value instanceof ReportedValue.Quantity quantity) {
      return ofQuantity(outcome, quantity);
    }
    return new Usable(value, false);
  }

  private static boolean fits(Outcome.Kind kind, ReportedValue value) {
    boolean events = value instanceof ReportedValue.Events;
    boolean rate = value instanceof ReportedValue.Rate;
    boolean quantity = value instanceof ReportedValue.Quantity;
    return switch (kind) {
      case EVENT -> events || rate;
      case COUNT -> quantity || rate || events;
      case CATEGORIES -> events || value instanceof ReportedValue.Categories;
      default -> quantity;
    };
  }

  private static UsableValue ofCount(EventCount count) {
    if (count.isComplete()) {
      return new Usable(new ReportedValue.Events(count), count.countedBack());
    }
    if (count.total().isEmpty()) {
      return count.events().isPresent()
          ? unusable("no-total", "The paper does not say of how many the events were counted.")
          : unusable(
              "percentage-without-count", "A percentage is printed, and not of how many it is.");
    }
    return countBack(count.percentAsReported().getAsDouble(), count.total().getAsInt())
        .<UsableValue>map(value -> new Usable(value, true))
        .orElseGet(
            () ->
                unusable(
                    "percentage-without-count",
                    count.percentAsReported().getAsDouble()
                        + " % of "
                        + count.total().getAsInt()
                        + " is printed, which no whole number or more than one gives."));
  }

  /**
   * The one whole number of events that gives a printed percentage at the decimals printed; a value
   * half-way may have been rounded either way. Empty when none or several do.
   */
  private static Optional<ReportedValue> countBack(double percent, int total) {
    BigDecimal printed =
        new BigDecimal(BigDecimal.valueOf(percent).stripTrailingZeros().toPlainString());
    int decimals = Math.max(0, printed.scale());
    BigDecimal half = BigDecimal.ONE.movePointLeft(decimals).multiply(new BigDecimal("0.5"));
    BigDecimal patientsPerPercent = BigDecimal.valueOf(total).movePointLeft(2);
    int least =
        printed
            .subtract(half)
            .multiply(patientsPerPercent)
            .setScale(0, RoundingMode.CEILING)
            .max(BigDecimal.ZERO)
            .intValueExact();
    int most =
        printed
            .add(half)
            .multiply(patientsPerPercent)
            .setScale(0, RoundingMode.FLOOR)
            .min(BigDecimal.valueOf(total))
            .intValueExact();
    if (least != most) {
      return Optional.empty();
    }
    return Optional.of(
        new ReportedValue.Events(
            new EventCount(
                OptionalInt.of(least), OptionalInt.of(total), OptionalDouble.of(percent), true)));
  }

  private static UsableValue ofQuantity(Outcome outcome, ReportedValue.Quantity quantity) {
    QuantitySummary summary = quantity.summary();
    if (outcome.unit().filter(unit -> unit.dimension() != summary.unit().dimension()).isPresent()) {
      return unusable(
          "unit-does-not-fit",
          "The value is in "
              + summary.unit().symbol()
              + ", which cannot be carried into "
              + outcome.unit().get().symbol()
              + ".");
    }
    if (summary.centre().isEmpty()) {
      return unusable("no-centre", "Neither a mean nor a median is printed.");
    }
    if (summary.unstatedSpread().isPresent() && !hasStatedSpread(summary)) {
      return unusable(
          "spread-not-stated",
          "Numbers stand beside the centre, and the paper does not say whether they are a standard"
              + " deviation, quartiles or a range.");
    }
    return new Usable(quantity, false);
  }

  private static boolean hasStatedSpread(QuantitySummary summary) {
    return summary.standardDeviation().isPresent()
        || summary.standardError().isPresent()
        || (summary.lowerLimit().isPresent() && summary.upperLimit().isPresent())
        || (summary.lowerQuartile().isPresent() && summary.upperQuartile().isPresent())
        || (summary.minimum().isPresent() && summary.maximum().isPresent());
  }

  private static UsableValue unusable(String code, String message) {
    return new Unusable(new Reason(code, message));
  }
}
