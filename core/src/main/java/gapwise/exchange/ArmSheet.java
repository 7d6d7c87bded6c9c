package gapwise.exchange;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Detail;
import gapwise.evidence.KeptApart;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Provenance;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ApartReason;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodPart;
import gapwise.evidence.vocabulary.Missing;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.ListForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;

/** The sheet of arms: one row for each group of patients treated by one method. */
final class ArmSheet {
  private static final Field<String> LABEL =
      Field.text("label", "Name in the paper", "What the paper calls the group.");
  private static final Field<Method> METHOD =
      Field.of(
              "method",
              "Method",
              "The principal method, by which the arm is counted. Needed in every row but that of"
                  + " ALL.",
              CodeForm.of(Method.vocabulary()))
          .like("bone-transport");
  private static final Field<List<MethodPart>> PARTS =
      Field.of(
          "method_parts",
          "Further parts",
          "What goes with the method. Separate several by semicolons.",
          new ListForm<>(CodeForm.of(MethodPart.vocabulary())));
  private static final Field<String> METHOD_WORDS =
      Field.text("method_words", "Method, as printed", "The method in the words of the paper.");
  private static final Field<ApartReason> KEPT_APART =
      Field.of(
          "kept_apart",
          "Kept apart",
          "Why the group is kept and shown, but never pooled; blank for most.",
          CodeForm.of(ApartReason.class));
  private static final Field<String> KEPT_APART_WORDS =
      Field.text(
          "kept_apart_because",
          "Kept apart because",
          "The reason in words, such as 'tumours' or 'only patients in whom transport had failed'.");
  private static final BaselineFields BASELINE = new BaselineFields();
  private static final DetailFields DETAILS =
      new DetailFields(DetailKind.ofMethods(), "Of the method.");

  static final Sheet SHEET =
      new Sheet(
          "arms",
          "One row for each group of patients treated by one method. A row with arm_id ALL holds what"
              + " the paper gives for all its groups together.",
          fields());

  private static List<Field<?>> fields() {
    List<Field<?>> fields = new ArrayList<>(List.of(Keys.STUDY, Keys.ARM, METHOD, PARTS));
    fields.addAll(List.of(METHOD_WORDS, LABEL, KEPT_APART, KEPT_APART_WORDS));
    fields.addAll(BASELINE.fields());
    fields.addAll(DETAILS.fields());
    fields.addAll(ProvenanceFields.fields());
    return fields;
  }

  private ArmSheet() {}

  /** What one row holds: an arm, or the values of all arms together. */
  sealed interface ArmRow {
    String study();

    record One(String study, String id, Optional<Arm> arm) implements ArmRow {}

    record All(
        String study,
        Baseline baseline,
        Provenance provenance,
        SortedMap<String, Missing> missing,
        Optional<String> note)
        implements ArmRow {}
  }

  /** Empty when the row does not say of which arm it is. */
  static Optional<ArmRow> read(RowReader row) {
    Optional<String> study = row.get(Keys.STUDY);
    Optional<String> id = row.get(Keys.ARM);
    Optional<Method> method = row.get(METHOD);
    Optional<List<MethodPart>> parts = row.get(PARTS);
    Optional<String> methodWords = row.get(METHOD_WORDS);
    Optional<String> label = row.get(LABEL);
    Optional<ApartReason> apart = row.get(KEPT_APART);
    Optional<String> apartWords = row.get(KEPT_APART_WORDS);
    Optional<Baseline> baseline = BASELINE.read(row);
    SortedMap<String, Detail> details = DETAILS.read(row);
    Provenance provenance = ProvenanceFields.read(row);
    Optional<String> note = row.get(ProvenanceFields.NOTE);
    if (study.isEmpty() || id.isEmpty()) {
      return Optional.empty();
    }
    if (id.get().equals(Keys.ALL)) {
      boolean onlyBaseline =
          method.isEmpty()
              && parts.isEmpty()
              && methodWords.isEmpty()
              && label.isEmpty()
              && apart.isEmpty()
              && details.isEmpty();
      if (!onlyBaseline) {
        row.refuse(
            METHOD,
            "method-of-all",
            "The row of ALL names a method, a part or a detail of a method. Those belong to the arms;"
                + " leave them blank here.");
      }
      return Optional.of(
          new ArmRow.All(
              study.get(), baseline.orElse(Baseline.NOTHING), provenance, row.missing(), note));
    }
    requireMethod(row, method);
    Optional<Arm> arm =
        method.isPresent() && baseline.isPresent()
            ? row.built(
                () -> {
                  Arm.Builder built =
                      Arm.with(
                              id.get(),
                              new MethodUsed(method.get(), parts.orElse(List.of()), methodWords))
                          .baseline(baseline.get())
                          .details(details)
                          .provenance(provenance)
                          .missing(row.missing());
                  label.ifPresent(built::label);
                  apart.ifPresent(why -> built.keptApart(new KeptApart(why, apartWords)));
                  note.ifPresent(built::note);
                  return built.build();
                },
                Keys.ARM)
            : Optional.empty();
    return Optional.of(new ArmRow.One(study.get(), id.get(), arm));
  }

  private static void requireMethod(RowReader row, Optional<Method> method) {
    if (method.isEmpty()
        && (row.shown(METHOD).isEmpty() || row.missing().containsKey(METHOD.name()))) {
      row.refuse(
          METHOD,
          "missing-value",
          "The arm has no method. Choose one of the list; 'other' or 'mixed-salvage' where none fits.");
    }
  }

  /** The row of all arms together, where there is anything in it, and the row of each arm. */
  static List<RowWriter> write(Study study) {
    List<RowWriter> rows = new ArrayList<>();
    RowWriter whole = new RowWriter(SHEET);
    BASELINE.write(whole, study.whole());
    ProvenanceFields.write(whole, study.wholeProvenance(), study.wholeNote());
    whole.missing(study.wholeMissing());
    if (!whole.cells().isEmpty()) {
      whole.put(Keys.STUDY, study.id());
      whole.put(Keys.ARM, Keys.ALL);
      rows.add(whole);
    }
    study.arms().forEach(arm -> rows.add(write(study.id(), arm)));
    return rows;
  }

  private static RowWriter write(String study, Arm arm) {
    RowWriter row = new RowWriter(SHEET);
    row.put(Keys.STUDY, study);
    row.put(Keys.ARM, arm.id());
    row.put(METHOD, arm.method().principal());
    if (!arm.method().parts().isEmpty()) {
      row.put(PARTS, arm.method().parts());
    }
    row.put(METHOD_WORDS, arm.method().words());
    row.put(LABEL, arm.label());
    row.put(KEPT_APART, arm.keptApart().map(KeptApart::reason));
    row.put(KEPT_APART_WORDS, arm.keptApart().flatMap(KeptApart::words));
    BASELINE.write(row, arm.baseline());
    DETAILS.write(row, arm.details());
    ProvenanceFields.write(row, arm.provenance(), arm.note());
    row.missing(arm.missing());
    return row;
  }
}
