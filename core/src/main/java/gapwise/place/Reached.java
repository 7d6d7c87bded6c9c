package gapwise.place;

import gapwise.evidence.vocabulary.Clock;
import java.util.Objects;
import java.util.Optional;

/**
 * A milestone of the case with its time or cost.
 *
 * @param milestone what was reached
 * @param value months from the clock, above 0; for a cost an amount above 0
 * @param clock where the time starts; empty for a cost
 * @param currency ISO 4217 letters of a cost; empty for times
 * @param fromCourse whether it follows from the phases and was not entered by itself
 */
public record Reached(
    Milestone milestone,
    double value,
    Optional<Clock> clock,
    Optional<String> currency,
    boolean fromCourse) {
  public Reached {
    Objects.requireNonNull(milestone, "milestone");
    Objects.requireNonNull(clock, "clock");
    Objects.requireNonNull(currency, "currency");
    if (!(value > 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException("a time or cost must be above 0, was " + value);
    }
    if (milestone.isTime() == clock.isEmpty() || milestone.isTime() == currency.isPresent()) {
      throw new IllegalArgumentException("a time needs its clock, a cost its currency");
    }
  }

  /** A time entered by a person. */
  public static Reached at(Milestone milestone, double months, Clock clock) {
    return new Reached(milestone, months, Optional.of(clock), Optional.empty(), false);
  }

  /** A cost entered by a person. */
  public static Reached cost(double amount, String currency) {
    return new Reached(Milestone.COST, amount, Optional.empty(), Optional.of(currency), false);
  }
}
