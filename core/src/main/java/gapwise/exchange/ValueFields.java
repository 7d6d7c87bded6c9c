package gapwise.exchange;

import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.form.CategoryForm;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.NumberForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The columns of the numbers of an outcome. Which of them are filled decides the form of the value;
 * a row holds one form.
 */
final class ValueFields {
  private final CountFields counts = CountFields.ofOutcome();
  private final SummaryFields summary =
      new SummaryFields("", "Value", CodeForm.units(Unit.Dimension.values()), Optional.empty());
  private final Field<Double> personTime =
      Field.of(
              "person_time",
              "Time at risk",
              "Time at risk of all together, where events are counted over time.",
              LimitedForm.positive(NumberForm.plain()))
          .in("as in person_time_unit");
  private final Field<Unit> personTimeUnit =
      Field.of(
          "person_time_unit",
          "Time at risk: unit",
          "Unit as printed. Needed with a number.",
          CodeForm.units(Unit.Dimension.TIME));
  private final EffectFields effect = new EffectFields();
  private final Field<List<ReportedValue.Category>> categories =
      Field.of(
              "categories",
              "Categories",
              "Categories with their counts.",
              new ListForm<>(new CategoryForm()))
          .like("excellent 12; good 5; fair 1; poor 0");
  private final Field<String> statement =
      Field.text(
              "statement",
              "Statement",
              "What the paper says where it gives no numbers; the number of people goes into total.")
          .like("no difference");

  List<Field<?>> fields() {
    List<Field<?>> fields = new ArrayList<>(counts.fields());
    fields.addAll(summary.fields());
    fields.addAll(List.of(categories, statement, personTime, personTimeUnit));
    fields.addAll(effect.fields());
    return fields;
  }

  /** The value; whatever is not one form is a problem of the row. */
  Optional<ReportedValue> read(RowReader row, Optional<Outcome> outcome) {
    boolean wasSound = row.isSound();
    OptionalDouble time = row.number(personTime);
    Optional<Unit> timeUnit = row.get(personTimeUnit);
    Optional<List<ReportedValue.Category>> counted = row.get(categories);
    Optional<String> said = row.get(statement);
    Optional<QuantitySummary> numbers = summary.read(row);
    List<String> forms = new ArrayList<>();
    List<Optional<ReportedValue>> values = new ArrayList<>();
    if (time.isPresent()) {
      forms.add("time at risk");
      values.add(rate(row, time.getAsDouble(), timeUnit));
    }
    if (effect.isGiven(row)) {
      forms.add("an effect");
      values.add(effect.read(row));
    }
    if (counted.isPresent()) {
      forms.add("categories");
      values.add(categories(row, counted.get()));
    }
    if (said.isPresent()) {
      forms.add("a statement");
      values.add(Optional.of(new ReportedValue.Statement(said.get(), counts.readTotal(row))));
    }
    if (numbers.isPresent()) {
      forms.add("a mean, median or range");
      values.add(quantity(row, numbers.get()));
    }
    if (time.isEmpty() && countsGiven(row, said.isPresent())) {
      forms.add("events or a percentage");
      values.add(counted(row, outcome));
    }
    requireOneForm(row, forms, wasSound);
    return forms.size() == 1 ? values.get(0) : Optional.empty();
  }

  private boolean countsGiven(RowReader row, boolean totalIsTaken) {
    return counts.fields().stream()
        .filter(field -> !(totalIsTaken && field.equals(counts.total())))
        .anyMatch(field -> row.get(field).isPresent());
  }

  private Optional<ReportedValue> quantity(RowReader row, QuantitySummary numbers) {
    if (numbers.isEmpty()) {
      requireNumber(row);
      return Optional.empty();
    }
    return row.built(
        () -> new ReportedValue.Quantity(numbers), summary.fields().toArray(Field<?>[]::new));
  }

  private void requireNumber(RowReader row) {
    if (!row.hasRefused(summary.fields())) {
      Field<?> filled =
          summary.withoutNumbers().stream()
              .filter(field -> !row.shown(field).isEmpty())
              .findFirst()
              .orElseThrow();
      row.refuse(
          filled,
          "no-value",
          "Found '"
              + row.shown(filled)
              + "', but the row holds no mean, median or other number. Fill one in, or write what"
              + " the paper says into statement and clear the cell.");
    }
  }

  private Optional<ReportedValue> categories(RowReader row, List<ReportedValue.Category> counted) {
    if (counted.isEmpty()) {
      row.refuse(
          categories,
          "not-a-category",
          "Found '"
              + row.shown(categories)
              + "'; categories with counts such as 'excellent 12; good 5' were expected.");
      return Optional.empty();
    }
    return row.built(() -> new ReportedValue.Categories(counted), categories);
  }

  private Optional<ReportedValue> counted(RowReader row, Optional<Outcome> outcome) {
    boolean several = outcome.filter(o -> o.kind() == Outcome.Kind.COUNT).isPresent();
    if (several && counts.readEvents(row).isPresent()) {
      refuseShare(row, false);
      return row.built(
          () -> new ReportedValue.Tally(counts.readEvents(row).getAsInt(), counts.readTotal(row)),
          counts.events(),
          counts.total());
    }
    Optional<EventCount> count = counts.read(row);
    return count.map(ReportedValue.Events::new);
  }

  private Optional<ReportedValue> rate(RowReader row, double time, Optional<Unit> unit) {
    boolean complete = unit.isPresent() && counts.readEvents(row).isPresent();
    if (!complete) {
      row.refuse(
          unit.isEmpty() ? personTimeUnit : counts.events(),
          "incomplete-rate",
          "Time at risk needs its unit and the number of events in events.");
      return Optional.empty();
    }
    refuseShare(row, true);
    return row.built(
        () -> new ReportedValue.Rate(counts.readEvents(row).getAsInt(), time, unit.get()),
        personTime,
        counts.events());
  }

  /** Cells that only mean something for a share, so that nothing is dropped in silence. */
  private void refuseShare(RowReader row, boolean totalToo) {
    counts.ofShare(totalToo).stream()
        .filter(field -> row.get(field).isPresent())
        .findFirst()
        .ifPresent(
            field ->
                row.refuse(
                    field,
                    "not-a-share",
                    "Found '"
                        + row.shown(field)
                        + "', but these events are a rate and no share of patients. Clear the cell, and"
                        + " write what the paper prints into words."));
  }

  private void requireOneForm(RowReader row, List<String> forms, boolean wasSound) {
    if (forms.size() > 1) {
      row.refuse(
          counts.events(),
          "several-forms",
          "The row holds "
              + String.join(" and ", forms)
              + ". Give each a row of its own; the number of people behind a mean goes into n.");
    } else if (forms.isEmpty() && wasSound == row.isSound()) {
      row.refuse(
          counts.events(),
          "no-value",
          "The row holds no numbers. Write what the paper says into statement, or delete the row if"
              + " it says nothing.");
    }
  }

  void write(RowWriter row, ReportedValue value) {
    if (value instanceof ReportedValue.Events events) {
      counts.write(row, Optional.of(events.count()));
    } else if (value instanceof ReportedValue.Tally tally) {
      counts.write(row, tally.events(), tally.among());
    } else if (value instanceof ReportedValue.Quantity quantity) {
      summary.write(row, Optional.of(quantity.summary()));
    } else if (value instanceof ReportedValue.Rate rate) {
      row.put(counts.events(), Integer.valueOf(rate.events()));
      row.put(personTime, Double.valueOf(rate.personTime()));
      row.put(personTimeUnit, rate.unit());
    } else if (value instanceof ReportedValue.Effect reported) {
      effect.write(row, reported);
    } else if (value instanceof ReportedValue.Categories listed) {
      row.put(categories, listed.counts());
    } else if (value instanceof ReportedValue.Statement said) {
      row.put(statement, said.words());
      row.put(counts.total(), said.total());
    }
  }
}
