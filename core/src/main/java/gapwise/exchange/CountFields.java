package gapwise.exchange;

import gapwise.evidence.EventCount;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.NumberForm;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The columns of so many of so many, with the percentage as printed. */
final class CountFields {
  private final Field<Integer> events;
  private final Field<Integer> total;
  private final Field<Double> percent;
  private final Field<Boolean> countedBack;

  private CountFields(
      Field<Integer> events,
      Field<Integer> total,
      Field<Double> percent,
      Field<Boolean> countedBack) {
    this.events = events;
    this.total = total;
    this.percent = percent;
    this.countedBack = countedBack;
  }

  /** Columns of a characteristic: {@code male}, {@code male_of}, {@code male_percent}. */
  static CountFields of(String name, String what) {
    return new CountFields(
        Field.count(name, what, "How many."),
        Field.several(
            name + "_of", what + ": of how many", "Only where the paper prints a denominator."),
        percent(name + "_percent", what + ", %"),
        back(name + "_counted_back", what + ": counted back"));
  }

  /** The columns of an outcome. */
  static CountFields ofOutcome() {
    return new CountFields(
        Field.count("events", "Events", "How many had the outcome.").like("25"),
        Field.several("total", "Of how many", "The denominator that the paper uses.").like("26"),
        percent("percent", "Percent").like("96.2"),
        back("events_counted_back", "Events counted back"));
  }

  private static Field<Double> percent(String name, String title) {
    return Field.of(
            name,
            title,
            "The percentage as printed, even where it contradicts the counts.",
            LimitedForm.between(
                NumberForm.share(), 0, 100, "a percentage from 0 to 100 was expected"))
        .in("%");
  }

  private static Field<Boolean> back(String name, String title) {
    return Field.of(
        name,
        title,
        "yes where the count was worked out from the printed percentage.",
        CodeForm.yesOrNo());
  }

  List<Field<?>> fields() {
    return List.of(events, total, percent, countedBack);
  }

  Field<Integer> events() {
    return events;
  }

  Field<Integer> total() {
    return total;
  }

  /** The columns that only mean something where one patient can have one event. */
  List<Field<?>> ofShare(boolean totalToo) {
    return totalToo ? List.of(total, percent, countedBack) : List.of(percent, countedBack);
  }

  OptionalInt readEvents(RowReader row) {
    return row.count(events);
  }

  OptionalInt readTotal(RowReader row) {
    return row.count(total);
  }

  Optional<EventCount> read(RowReader row) {
    OptionalInt counted = readEvents(row);
    OptionalInt of = readTotal(row);
    OptionalDouble printed = row.number(percent);
    Optional<Boolean> back = row.get(countedBack);
    if (counted.isEmpty() && of.isEmpty() && printed.isEmpty()) {
      return Optional.empty();
    }
    if (!agree(row, counted, of, printed)) {
      return Optional.empty();
    }
    return row.built(
        () -> new EventCount(counted, of, printed, back.orElse(false)),
        events,
        total,
        percent,
        countedBack);
  }

  private boolean agree(
      RowReader row, OptionalInt counted, OptionalInt of, OptionalDouble printed) {
    if (counted.isPresent() && of.isPresent() && counted.getAsInt() > of.getAsInt()) {
      row.refuse(
          events,
          "impossible",
          "In this row %s %d exceed %s %d. Check both against the paper and correct the row."
              .formatted(events.name(), counted.getAsInt(), total.name(), of.getAsInt()));
      return false;
    }
    if (counted.isEmpty() && printed.isEmpty()) {
      if (!row.hasRefused(fields())) {
        row.refuse(
            total,
            "incomplete-count",
            "Found %s of how many, but neither how many (%s) nor a percentage (%s). Fill one in, or clear the cell."
                .formatted(row.shown(total), events.name(), percent.name()));
      }
      return false;
    }
    return true;
  }

  void write(RowWriter row, Optional<EventCount> count) {
    count.ifPresent(
        value -> {
          row.put(events, value.events());
          row.put(total, value.total());
          row.put(percent, value.percentAsReported());
          if (value.countedBack()) {
            row.put(countedBack, true);
          }
        });
  }

  void write(RowWriter row, int counted, OptionalInt among) {
    row.put(events, Integer.valueOf(counted));
    row.put(total, among);
  }
}
