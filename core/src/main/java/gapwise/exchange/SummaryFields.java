package gapwise.exchange;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Unit;
import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.NumberForm;
import gapwise.exchange.form.SpreadForm;
import java.util.List;
import java.util.Optional;

/** The columns of a quantity as a group of patients is reported, all with the same start. */
final class SummaryFields {
  private final Field<Unit> unit;
  private final Field<Double> mean;
  private final Field<Double> sd;
  private final Field<Double> se;
  private final Field<Double> ciLower;
  private final Field<Double> ciUpper;
  private final Field<Double> median;
  private final Field<Double> q1;
  private final Field<Double> q3;
  private final Field<Double> min;
  private final Field<Double> max;
  private final Field<Integer> n;
  private final Field<UnstatedSpread> spread;
  private final Field<String> words;
  private final Optional<Unit> usualUnit;

  /**
   * @param prefix start of the column names, such as {@code age_}; may be empty
   * @param what the quantity, for titles
   * @param units units that may be given
   * @param usualUnit the unit when none is given; empty when one must be given
   */
  SummaryFields(String prefix, String what, CellForm<Unit> units, Optional<Unit> usualUnit) {
    this.usualUnit = usualUnit;
    String inUnit = usualUnit.map(Unit::symbol).orElse("as in " + prefix + "unit");
    NumberForm number = new NumberForm(Optional.of(prefix), false);
    CellForm<Double> spreadNumber = LimitedForm.notNegative(number);
    unit =
        Field.of(
            prefix + "unit",
            what + ": unit",
            "Unit as printed."
                + usualUnit
                    .map(u -> " Blank means " + u.symbol() + ".")
                    .orElse(" Needed with numbers."),
            units);
    mean = number(prefix + "mean", what + ": mean", "Arithmetic mean.", number, inUnit);
    sd =
        number(
            prefix + "sd",
            what + ": SD",
            "Standard deviation; only where the paper says that it is one.",
            spreadNumber,
            inUnit);
    se = number(prefix + "se", what + ": SE", "Standard error of the mean.", spreadNumber, inUnit);
    ciLower =
        number(prefix + "ci_lower", what + ": lower 95 % limit", "Of the mean.", number, inUnit);
    ciUpper =
        number(prefix + "ci_upper", what + ": upper 95 % limit", "Of the mean.", number, inUnit);
    median = number(prefix + "median", what + ": median", "Median.", number, inUnit);
    q1 = number(prefix + "q1", what + ": first quartile", "25 % lie below.", number, inUnit);
    q3 = number(prefix + "q3", what + ": third quartile", "75 % lie below.", number, inUnit);
    min = number(prefix + "min", what + ": smallest", "Smallest value.", number, inUnit);
    max = number(prefix + "max", what + ": largest", "Largest value.", number, inUnit);
    n =
        Field.of(
            prefix + "n",
            what + ": n",
            "How many the numbers describe, where it differs from the arm or is printed beside them.",
            LimitedForm.several());
    spread =
        Field.of(
            prefix + "spread_unstated",
            what + ": spread of unknown kind",
            "What is printed in brackets or after ± where the paper does not say whether it is SD,"
                + " range or quartiles: '± 7' or '(5-20)'. With the number before it, '12 (5-20)',"
                + " where it does not say mean or median either.",
            new SpreadForm());
    words = Field.text(prefix + "value_words", what + ": as printed", "These numbers as printed.");
  }

  private static Field<Double> number(
      String name, String title, String description, CellForm<Double> form, String inUnit) {
    return Field.of(name, title, description, form).in(inUnit);
  }

  List<Field<?>> fields() {
    return List.of(
        mean, sd, median, q1, q3, min, max, unit, n, se, ciLower, ciUpper, spread, words);
  }

  Optional<QuantitySummary> read(RowReader row) {
    Optional<Unit> given = row.get(unit);
    QuantitySummaryBuilder unitless =
        fill(row, QuantitySummary.with(given.or(() -> usualUnit).orElse(Unit.POINTS)));
    requireOrder(row);
    Field<?>[] from = fields().toArray(Field<?>[]::new);
    Optional<QuantitySummary> summary = row.built(unitless::build, from);
    boolean nothing =
        summary.filter(s -> s.isEmpty() && s.words().isEmpty() && s.n().isEmpty()).isPresent();
    if (nothing) {
      return Optional.empty();
    }
    if (summary.isPresent() && given.isEmpty() && usualUnit.isEmpty()) {
      if (row.shown(unit).isEmpty()) {
        row.refuse(
            unit,
            "missing-unit",
            "The row has numbers but no unit. Expected one of "
                + String.join(", ", unit.form().allowed())
                + "; write the unit that the paper prints.");
      }
      return Optional.empty();
    }
    return summary;
  }

  /** The widest pairs first, so that one slip is told once. */
  private void requireOrder(RowReader row) {
    row.requireOrder(ciLower, ciUpper);
    row.requireOrder(min, max);
    row.requireOrder(q1, q3);
    row.requireOrder(min, q1);
    row.requireOrder(q3, max);
    row.requireOrder(min, median);
    row.requireOrder(median, max);
    row.requireOrder(q1, median);
    row.requireOrder(median, q3);
    row.requireOrder(min, mean);
    row.requireOrder(mean, max);
  }

  /** Columns that tell of numbers and hold none. */
  List<Field<?>> withoutNumbers() {
    return List.of(n, words);
  }

  private QuantitySummaryBuilder fill(RowReader row, QuantitySummaryBuilder summary) {
    row.get(mean).ifPresent(summary::mean);
    row.get(sd).ifPresent(summary::standardDeviation);
    row.get(se).ifPresent(summary::standardError);
    row.get(ciLower).ifPresent(summary::lowerLimit);
    row.get(ciUpper).ifPresent(summary::upperLimit);
    row.get(median).ifPresent(summary::median);
    row.get(q1).ifPresent(summary::lowerQuartile);
    row.get(q3).ifPresent(summary::upperQuartile);
    row.get(min).ifPresent(summary::minimum);
    row.get(max).ifPresent(summary::maximum);
    row.get(n).ifPresent(summary::n);
    row.get(spread).ifPresent(summary::unstatedSpread);
    row.get(words).ifPresent(summary::words);
    return summary;
  }

  void write(RowWriter row, Optional<QuantitySummary> summary) {
    summary.ifPresent(value -> write(row, value));
  }

  private void write(RowWriter row, QuantitySummary value) {
    if (!usualUnit.equals(Optional.of(value.unit()))) {
      row.put(unit, value.unit());
    }
    row.put(mean, value.mean());
    row.put(sd, value.standardDeviation());
    row.put(se, value.standardError());
    row.put(ciLower, value.lowerLimit());
    row.put(ciUpper, value.upperLimit());
    row.put(median, value.median());
    row.put(q1, value.lowerQuartile());
    row.put(q3, value.upperQuartile());
    row.put(min, value.minimum());
    row.put(max, value.maximum());
    row.put(n, value.n());
    row.put(spread, value.unstatedSpread());
    row.put(words, value.words());
  }
}
