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
      return new Unusable(Reason.Plain.WORDS);
    }
    if (value instanceof ReportedValue.Effect) {
      return new Unusable(Reason.Plain.DIFFERENCE);
    }
    if (outcome.kind() == Outcome.Kind.COUNT) {
      return ofCountForEachPatient(outcome, value);
    }
    if (!fits(outcome.kind(), value)) {
      return new Unusable(new Reason.FormDoesNotFit(outcome));
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
      case CATEGORIES -> events || value instanceof ReportedValue.Categories;
      default -> quantity;
    };
  }

  /**
   * A mean, or a sum of events among patients. A percentage is a share of patients, which is
   * another outcome; events over time at risk are not for each patient.
   */
  private static UsableValue ofCountForEachPatient(Outcome outcome, ReportedValue value) {
    if (value instanceof ReportedValue.Tally) {
      return new Usable(value, false);
    }
    if (value instanceof ReportedValue.Quantity quantity) {
      return ofQuantity(outcome, quantity);
    }
    if (value instanceof ReportedValue.Rate) {
      return new Unusable(Reason.Plain.OVER_TIME);
    }
    if (value instanceof ReportedValue.Events events
        && events.count().events().isPresent()
        && !events.count().countedBack()) {
      return new Usable(
          new ReportedValue.Tally(events.count().events().getAsInt(), events.count().total()),
          false);
    }
    return new Unusable(new Reason.FormDoesNotFit(outcome));
  }

  private static UsableValue ofCount(EventCount count) {
    if (count.isComplete()) {
      return new Usable(new ReportedValue.Events(count), count.countedBack());
    }
    if (count.total().isEmpty()) {
      return new Unusable(
          count.events().isPresent() ? Reason.Plain.NO_TOTAL : Reason.Plain.PERCENTAGE_ALONE);
    }
    return countBack(count.percentAsReported().getAsDouble(), count.total().getAsInt())
        .<UsableValue>map(value -> new Usable(value, true))
        .orElseGet(
            () ->
                new Unusable(
                    new Reason.PercentageOf(
                        count.percentAsReported().getAsDouble(), count.total().getAsInt())));
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
      return new Unusable(new Incomparable.UnitDoesNotFit(summary.unit(), outcome.unit().get()));
    }
    if (summary.centre().isEmpty()) {
      return new Unusable(Reason.Plain.NO_CENTRE);
    }
    return new Usable(quantity, false);
  }
}
