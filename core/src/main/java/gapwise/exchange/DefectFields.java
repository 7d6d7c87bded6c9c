package gapwise.exchange;

import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.DefectStage;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.exchange.form.BandForm;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.NumberForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The columns of the missing length of an arm. */
final class DefectFields {
  private final SummaryFields summary =
      new SummaryFields(
          "defect_length_",
          "Missing length",
          CodeForm.units(Unit.Dimension.LENGTH),
          Optional.empty());
  private final Field<Double> over =
      Field.of(
              "defect_length_over_cm",
              "Missing length: over",
              "A threshold by which patients were chosen, such as 4 for 'over 4 cm'. Never a mean.",
              LimitedForm.positive(NumberForm.plain()))
          .in("cm");
  private final Field<List<DefectLength.Band>> bands =
      Field.of(
              "defect_length_bands_cm",
              "Missing length: bands",
              "How many defects in each band.",
              new ListForm<>(new BandForm()))
          .in("cm")
          .like("2-4: 5; 4-6: 3; 6+: 2");
  private final Field<String> words =
      Field.text(
          "defect_length_words",
          "Missing length: in words",
          "What the paper says of the length where numbers do not hold it.");
  private final Field<DefectStage> stage =
      Field.of(
          "defect_stage",
          "Missing length: measured",
          "Before or after debridement.",
          CodeForm.of(DefectStage.class));
  private final Field<YesOrNo> shortening =
      Field.of(
          "shortening_included",
          "Shortening included",
          "Whether shortening of the limb is added to the gap.",
          CodeForm.of(YesOrNo.class));

  List<Field<?>> fields() {
    List<Field<?>> fields = new ArrayList<>(summary.fields());
    fields.addAll(List.of(over, bands, words, stage, shortening));
    return fields;
  }

  Optional<DefectLength> read(RowReader row) {
    Optional<QuantitySummary> numbers = summary.read(row);
    OptionalDouble threshold = row.number(over);
    Optional<List<DefectLength.Band>> counted = row.get(bands);
    Optional<String> said = row.get(words);
    Optional<DefectStage> measured = row.get(stage);
    Optional<YesOrNo> added = row.get(shortening);
    boolean nothing =
        numbers.isEmpty()
            && threshold.isEmpty()
            && counted.isEmpty()
            && said.isEmpty()
            && measured.isEmpty()
            && added.isEmpty();
    if (nothing) {
      return Optional.empty();
    }
    Field<?>[] from = fields().toArray(Field<?>[]::new);
    if (numbers.isEmpty() && threshold.isEmpty() && counted.isEmpty() && said.isEmpty()) {
      requireLength(row, measured.isPresent() ? stage : shortening);
      return Optional.empty();
    }
    return row.built(
        () ->
            new DefectLength(numbers, threshold, counted.orElse(List.of()), said, measured, added),
        from);
  }

  /** How the length was measured says nothing where no length is given. */
  private void requireLength(RowReader row, Field<?> filled) {
    if (!row.hasRefused(fields())) {
      row.refuse(
          filled,
          "length-missing",
          "Found '"
              + row.shown(filled)
              + "', which tells how the missing length was measured, but the row gives no length."
              + " Fill in a number, or what the paper says into defect_length_words; else clear"
              + " the cell.");
    }
  }

  void write(RowWriter row, Optional<DefectLength> defect) {
    defect.ifPresent(
        value -> {
          summary.write(row, value.summary());
          row.put(over, value.overCentimetres());
          if (!value.bands().isEmpty()) {
            row.put(bands, value.bands());
          }
          row.put(words, value.words());
          row.put(stage, value.stage());
          row.put(shortening, value.shorteningIncluded());
        });
  }
}
