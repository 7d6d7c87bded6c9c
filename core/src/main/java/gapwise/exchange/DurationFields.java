package gapwise.exchange;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import gapwise.exchange.form.CodeForm;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A time and its unit. */
final class DurationFields {
  private final Field<Double> value;
  private final Field<Unit> unit;

  DurationFields(String name, String title, String description) {
    value = Field.amount(name, title, description).in("as in " + name + "_unit");
    unit =
        Field.of(
            name + "_unit",
            title + ": unit",
            "Unit as printed. Needed with a number.",
            CodeForm.units(Unit.Dimension.TIME));
  }

  List<Field<?>> fields() {
    return List.of(value, unit);
  }

  Optional<Duration> read(RowReader row) {
    OptionalDouble number = row.number(value);
    Optional<Unit> given = row.get(unit);
    if (number.isEmpty()) {
      return Optional.empty();
    }
    if (given.isEmpty()) {
      if (row.shown(unit).isEmpty()) {
        row.refuse(
            unit,
            "missing-unit",
            "There is a number in "
                + value.name()
                + " but no unit. Expected one of "
                + String.join(", ", unit.form().allowed())
                + ".");
      }
      return Optional.empty();
    }
    return row.built(() -> new Duration(number.getAsDouble(), given.get()), value, unit);
  }

  void write(RowWriter row, Optional<Duration> duration) {
    duration.ifPresent(
        time -> {
          row.put(value, Double.valueOf(time.value()));
          row.put(unit, time.unit());
        });
  }
}
