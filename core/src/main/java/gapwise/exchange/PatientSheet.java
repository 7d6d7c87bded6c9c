package gapwise.exchange;

import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Sex;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.NumberForm;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The sheet of patients described one by one. Every outcome of the vocabulary may be a column,
 * named as its code with underscores; a number is in the usual unit of the outcome unless the
 * column of the same name with {@code _unit} says otherwise.
 */
final class PatientSheet {
  static final Field<String> PATIENT =
      Field.id(
              "patient",
              "Patient",
              "What the paper calls the patient. Never a name or anything that identifies a person.")
          .asRequired()
          .like("case 1");
  private static final Field<Double> AGE =
      Field.of(
              "age",
              "Age",
              "Age.",
              LimitedForm.between(
                  NumberForm.plain(), 0, 110, "an age from 0 to 110 years was expected"))
          .in("years");
  private static final Field<Sex> SEX =
      Field.of("sex", "Sex", "As reported.", CodeForm.of(Sex.class));
  private static final Field<Bone> BONE =
      Field.of("bone", "Bone", "Bone with the defect.", CodeForm.of(Bone.class));
  private static final Field<String> SEGMENT =
      Field.text("segment", "Bone segment", "AO/OTA code.").like("42");
  private static final Field<YesOrNo> INFECTED =
      Field.of("infected", "Infected", "Infected at the start.", CodeForm.of(YesOrNo.class));
  private static final Field<Double> DEFECT =
      Field.amount("defect_length", "Missing length", "Length of the missing bone.")
          .in("as in defect_length_unit");
  private static final Field<Unit> DEFECT_UNIT =
      Field.of(
          "defect_length_unit",
          "Missing length: unit",
          "Unit as printed. Needed with a number.",
          CodeForm.units(Unit.Dimension.LENGTH));
  private static final Field<Boolean> APPROXIMATE =
      Field.of(
          "defect_length_approximate",
          "Missing length: about",
          "yes where the paper says about or approximately.",
          CodeForm.yesOrNo());
  private static final DurationFields FOLLOW_UP =
      new DurationFields("follow_up", "Follow-up", "How long the patient was followed.");

  /** Outcomes that papers most often give patient by patient; common practice, no source. */
  private static final List<String> COMMON =
      List.of(
          "union",
          "time-to-union",
          "external-fixation-time",
          "external-fixation-index",
          "time-to-full-weight-bearing",
          "infection-recurrence",
          "deep-infection",
          "refracture",
          "unplanned-operations",
          "secondary-amputation",
          "bone-result",
          "functional-result");

  private record OutcomeFields(Outcome outcome, Field<?> value, Optional<Field<Unit>> unit) {}

  private static final Map<String, OutcomeFields> OUTCOMES =
      Outcome.vocabulary().all().stream()
          .collect(
              Collectors.toMap(
                  Outcome::code, PatientSheet::fieldsOf, (a, b) -> a, LinkedHashMap::new));

  /** The sheet with the outcome columns that are most often needed. */
  static final Sheet SHEET = sheetWith(COMMON);

  /** The sheet with a column for every outcome, as reading takes it. */
  static final Sheet FULL = sheetWith(List.copyOf(OUTCOMES.keySet()));

  private PatientSheet() {}

  private static OutcomeFields fieldsOf(Outcome outcome) {
    String name = DetailFields.columnOf(outcome);
    if (outcome.isEvent()) {
      return new OutcomeFields(
          outcome,
          Field.of(name, outcome.label(), outcome.meaning(), CodeForm.of(YesOrNo.class)),
          Optional.empty());
    }
    if (outcome.kind() == Outcome.Kind.CATEGORIES) {
      return new OutcomeFields(
          outcome, Field.text(name, outcome.label(), outcome.meaning()), Optional.empty());
    }
    String usual = outcome.unit().map(Unit::symbol).orElse("points");
    return new OutcomeFields(
        outcome,
        Field.number(name, outcome.label(), outcome.meaning()).in(usual),
        Optional.of(
            Field.of(
                name + "_unit",
                outcome.label() + ": unit",
                "Blank means " + usual + ".",
                CodeForm.units(Unit.Dimension.values()))));
  }

  private static Sheet sheetWith(List<String> outcomes) {
    List<Field<?>> fields = new ArrayList<>(List.of(Keys.STUDY, Keys.ARM, PATIENT, AGE, SEX));
    fields.addAll(List.of(BONE, SEGMENT, INFECTED, DEFECT, DEFECT_UNIT, APPROXIMATE));
    for (String code : outcomes) {
      OutcomeFields outcome = Objects.requireNonNull(OUTCOMES.get(code), code);
      fields.add(outcome.value());
      outcome.unit().ifPresent(fields::add);
    }
    fields.addAll(FOLLOW_UP.fields());
    fields.addAll(ProvenanceFields.fields());
    return new Sheet(
        "patients",
        "One row for each patient that a paper describes. Every outcome code may be a column.",
        fields);
  }

  /** The sheet with the usual outcome columns and those that some studies need besides. */
  static Sheet sheetFor(List<Study> studies) {
    Set<String> codes = new TreeSet<>();
    studies.forEach(study -> codes.addAll(outcomes(study)));
    return sheetFor(codes);
  }

  /** The same for the codes of the outcomes that some patients have. */
  static Sheet sheetFor(Set<String> codes) {
    List<String> needed = new ArrayList<>(COMMON);
    codes.stream().filter(code -> !needed.contains(code)).sorted().forEach(needed::add);
    return sheetWith(needed);
  }

  /** The codes of the outcomes that patients of a study have. */
  static Set<String> outcomes(Study study) {
    return study.patients().stream()
        .flatMap(patient -> patient.outcomes().keySet().stream())
        .collect(Collectors.toSet());
  }

  /** What one row holds; the patient is empty when something in the row is wrong. */
  record PatientLine(String study, String arm, Optional<String> id, Optional<PatientRow> patient) {}

  static Optional<PatientLine> read(RowReader row) {
    Optional<String> study = row.get(Keys.STUDY);
    Optional<String> arm = row.get(Keys.ARM);
    Optional<String> id = row.get(PATIENT);
    PatientRow.Builder patient = PatientRow.with(id.orElse("unknown"), arm.orElse("unknown"));
    row.get(AGE).ifPresent(patient::ageYears);
    row.get(SEX).ifPresent(patient::sex);
    row.get(BONE).ifPresent(patient::bone);
    row.get(SEGMENT).ifPresent(patient::segment);
    row.get(INFECTED).ifPresent(patient::infected);
    defect(row).ifPresent(patient::defect);
    FOLLOW_UP.read(row).ifPresent((Duration time) -> patient.followUp(time));
    patient.outcomes(outcomes(row));
    patient.provenance(ProvenanceFields.read(row));
    row.get(ProvenanceFields.NOTE).ifPresent(patient::note);
    patient.missing(row.missing());
    Optional<PatientRow> built =
        row.built(patient::build, AGE, PATIENT, Keys.ARM).filter(p -> row.isSound());
    if (study.isEmpty() || arm.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new PatientLine(study.get(), arm.get(), id, built));
  }

  private static Optional<Length> defect(RowReader row) {
    OptionalDouble value = row.number(DEFECT);
    Optional<Unit> unit = row.get(DEFECT_UNIT);
    Optional<Boolean> approximate = row.get(APPROXIMATE);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    if (unit.isEmpty()) {
      if (row.shown(DEFECT_UNIT).isEmpty()) {
        row.refuse(
            DEFECT_UNIT, "missing-unit", "The missing length has no unit. Expected cm or mm.");
      }
      return Optional.empty();
    }
    return row.built(
        () -> new Length(value.getAsDouble(), unit.get(), approximate.orElse(false)),
        DEFECT,
        DEFECT_UNIT,
        APPROXIMATE);
  }

  private static SortedMap<String, PatientOutcome> outcomes(RowReader row) {
    SortedMap<String, PatientOutcome> outcomes = new TreeMap<>();
    for (OutcomeFields fields : OUTCOMES.values()) {
      outcome(row, fields).ifPresent(value -> outcomes.put(fields.outcome().code(), value));
    }
    return outcomes;
  }

  private static Optional<PatientOutcome> outcome(RowReader row, OutcomeFields fields) {
    Optional<Unit> unit = fields.unit().flatMap(row::get);
    return row.get(fields.value())
        .map(
            value -> {
              if (value instanceof YesOrNo answer) {
                return new PatientOutcome.Happened(answer);
              }
              if (value instanceof Double number) {
                Unit usual = fields.outcome().unit().orElse(Unit.POINTS);
                return new PatientOutcome.Measured(number, unit.orElse(usual));
              }
              return new PatientOutcome.Graded(value.toString());
            });
  }

  static List<RowWriter> write(Study study, Sheet sheet) {
    return study.patients().stream().map(p -> write(study.id(), p, sheet)).toList();
  }

  private static RowWriter write(String study, PatientRow patient, Sheet sheet) {
    RowWriter row = new RowWriter(sheet);
    row.put(Keys.STUDY, study);
    row.put(Keys.ARM, patient.armId());
    row.put(PATIENT, patient.id());
    row.put(AGE, patient.ageYears());
    row.put(SEX, patient.sex());
    row.put(BONE, patient.bone());
    row.put(SEGMENT, patient.segment());
    row.put(INFECTED, patient.infected());
    patient.defect().ifPresent(length -> write(row, length));
    FOLLOW_UP.write(row, patient.followUp());
    patient.outcomes().forEach((code, outcome) -> write(row, code, outcome));
    ProvenanceFields.write(row, patient.provenance(), patient.note());
    row.missing(patient.missing());
    return row;
  }

  private static void write(RowWriter row, Length length) {
    row.put(DEFECT, Double.valueOf(length.value()));
    row.put(DEFECT_UNIT, length.unit());
    if (length.approximate()) {
      row.put(APPROXIMATE, true);
    }
  }

  @SuppressWarnings("unchecked") // The form of a field follows the kind of its outcome.
  private static void write(RowWriter row, String code, PatientOutcome outcome) {
    OutcomeFields fields = Objects.requireNonNull(OUTCOMES.get(code), code);
    if (outcome instanceof PatientOutcome.Happened happened) {
      row.put((Field<YesOrNo>) fields.value(), happened.answer());
    } else if (outcome instanceof PatientOutcome.Graded graded) {
      row.put((Field<String>) fields.value(), graded.grade());
    } else if (outcome instanceof PatientOutcome.Measured measured) {
      row.put((Field<Double>) fields.value(), Double.valueOf(measured.value()));
      if (!fields.outcome().unit().equals(Optional.of(measured.unit()))) {
        fields.unit().ifPresent(unit -> row.put(unit, measured.unit()));
      }
    }
  }
}
