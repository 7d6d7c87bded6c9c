package gapwise.exchange;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.Subgroup;
import gapwise.evidence.TestOfMeans;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Money;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.Standing;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.ListForm;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The sheet of outcomes: one row for each number, or group of numbers, that a paper reports. */
final class OutcomeSheet {
  static final Field<String> AGAINST =
      Field.id(
          "against_arm",
          "Against arm",
          "The other arm, where the paper reports only a comparison of two.");
  static final Field<Outcome> OUTCOME =
      Field.of(
              "outcome",
              "Outcome",
              "What is reported. Each definition of union is an outcome of its own.",
              CodeForm.of(Outcome.vocabulary()))
          .asRequired()
          .like("primary-union");
  private static final ValueFields VALUE = new ValueFields();
  private static final Field<CountedUnit> COUNTED =
      Field.of(
          "unit_counted",
          "Counted",
          "Whether patients, limbs or defects were counted.",
          CodeForm.of(CountedUnit.class));
  private static final Field<String> DEFINITION =
      Field.text("definition", "Definition", "Definition as reported.");
  private static final Field<List<DefinitionKind>> DEFINITION_KINDS =
      Field.of(
          "definition_kinds",
          "Definition by the vocabulary",
          "What the definition asks for; left blank, it is read from the words and asked about."
              + " Separate several by semicolons.",
          new ListForm<>(CodeForm.of(DefinitionKind.vocabulary())));
  private static final Field<Clock> CLOCK =
      Field.of(
          "clock",
          "Clock",
          "Where a time starts. Times on different clocks are never pooled.",
          CodeForm.of(Clock.class));
  private static final DurationFields TIME_POINT =
      new DurationFields("time_point", "Time point", "When it was observed.");
  private static final Field<Integer> FOLLOWED =
      Field.count("followed", "Followed", "Patients or limbs followed to this point.");
  private static final Field<String> SUBGROUP =
      Field.text(
              "subgroup",
              "Subgroup",
              "Which part of the arm; blank for the whole arm. Never counted together with it.")
          .like("defect over 60 mm");
  private static final Field<Double> DEFECT_FROM =
      Field.amount("defect_from_cm", "Subgroup: missing length from", "Where it is a band.")
          .in("cm");
  private static final Field<Double> DEFECT_TO =
      Field.amount("defect_to_cm", "Subgroup: missing length to", "Where it is a band.").in("cm");
  private static final Field<Phase> PHASE =
      Field.of(
          "phase",
          "Phase",
          "Which phase, for the outcome treatment-phase.",
          CodeForm.of(Phase.class));
  private static final Field<Currency> CURRENCY =
      Field.of("currency", "Currency", "Of a cost, three letters.", CodeForm.currency())
          .like("EUR");
  private static final Field<Integer> PRICE_YEAR =
      Field.year("price_year", "Price year", "Year of the prices.");
  private static final Field<String> TEST =
      Field.text(
              "test_words",
              "Test, as printed",
              "P value or test statistic beside the number, with what it compares. Kept and shown;"
                  + " analyses use the three columns after it.")
          .like("t = 2.4, p = 0.02, against group B");
  private static final TestFields TESTED = new TestFields();
  private static final Field<Standing> STANDING =
      Field.of(
          "standing",
          "Standing",
          "Blank where the number counts; alternative for another report of the same number;"
              + " superseded for one that a later report replaces.",
          CodeForm.of(Standing.class));

  static final Sheet SHEET =
      new Sheet(
          "outcomes",
          "One row for each number, or group of numbers, that a paper reports of one outcome.",
          fields());

  private static List<Field<?>> fields() {
    List<Field<?>> fields = new ArrayList<>(List.of(Keys.STUDY, Keys.ARM, OUTCOME));
    fields.addAll(VALUE.fields().subList(0, 3));
    fields.addAll(List.of(COUNTED, DEFINITION, DEFINITION_KINDS));
    fields.addAll(VALUE.fields().subList(4, 15));
    fields.addAll(List.of(CLOCK));
    fields.addAll(TIME_POINT.fields());
    fields.addAll(List.of(FOLLOWED, SUBGROUP, DEFECT_FROM, DEFECT_TO));
    fields.add(VALUE.fields().get(3));
    fields.addAll(VALUE.fields().subList(15, VALUE.fields().size()));
    fields.addAll(List.of(AGAINST, PHASE, CURRENCY, PRICE_YEAR, TEST));
    fields.addAll(TESTED.fields());
    fields.add(STANDING);
    fields.addAll(ProvenanceFields.fields());
    return fields;
  }

  private OutcomeSheet() {}

  /** What one row holds; the report is empty when something in the row is wrong. */
  record OutcomeRow(String study, List<String> arms, Optional<OutcomeReport> report) {}

  static Optional<OutcomeRow> read(RowReader row) {
    Optional<String> study = row.get(Keys.STUDY);
    Optional<String> arm = row.get(Keys.ARM);
    Optional<String> against = row.get(AGAINST);
    Optional<Scope> scope = arm.flatMap(id -> scope(row, id, against));
    Optional<Outcome> outcome = row.get(OUTCOME);
    Optional<ReportedValue> value = VALUE.read(row, outcome);
    Optional<OutcomeReport> report = Optional.empty();
    if (scope.isPresent() && outcome.isPresent() && value.isPresent()) {
      report = report(row, OutcomeReport.with(scope.get(), outcome.get(), value.get()));
    } else {
      // Read for what may be wrong in the other cells.
      report(row, Optional.empty());
    }
    Optional<OutcomeReport> sound = report.filter(r -> row.isSound());
    List<String> arms = new ArrayList<>(scope.map(Scope::armIds).orElse(List.of()));
    sound.flatMap(OutcomeReport::tested).map(TestOfMeans::against).ifPresent(arms::add);
    return study.map(id -> new OutcomeRow(id, arms, sound));
  }

  /** The column that names one of the further arms of a row. */
  static Field<String> naming(Optional<?> value, int index) {
    boolean tested =
        value
            .filter(OutcomeReport.class::isInstance)
            .map(report -> ((OutcomeReport) report).scope().armIds().size())
            .filter(ofScope -> index >= ofScope)
            .isPresent();
    return tested ? TESTED.against() : AGAINST;
  }

  private static Optional<Scope> scope(RowReader row, String arm, Optional<String> against) {
    if (against.filter(arm::equals).isPresent()) {
      row.refuse(
          AGAINST,
          "impossible",
          "Found '" + row.shown(AGAINST) + "', the same as in arm_id. Name the other arm.");
      return Optional.empty();
    }
    if (against.isPresent()) {
      return row.built(() -> new Scope.Comparison(arm, against.get()), AGAINST, Keys.ARM);
    }
    return arm.equals(Keys.ALL)
        ? Optional.of(new Scope.AllArms())
        : row.built(() -> new Scope.OneArm(arm), Keys.ARM);
  }

  private static Optional<OutcomeReport> report(RowReader row, OutcomeReport.Builder report) {
    return report(row, Optional.of(report));
  }

  private static Optional<OutcomeReport> report(
      RowReader row, Optional<OutcomeReport.Builder> started) {
    Optional<String> definition = row.get(DEFINITION);
    Optional<List<DefinitionKind>> kinds = row.get(DEFINITION_KINDS);
    Optional<CountedUnit> counted = row.get(COUNTED);
    Optional<Clock> clock = row.get(CLOCK);
    Optional<Duration> timePoint = TIME_POINT.read(row);
    OptionalInt followed = row.count(FOLLOWED);
    Optional<Subgroup> subgroup = subgroup(row);
    Optional<Phase> phase = row.get(PHASE);
    Optional<Money> money = money(row);
    Optional<String> test = row.get(TEST);
    Optional<TestOfMeans> tested = TESTED.read(row);
    Optional<Standing> standing = row.get(STANDING);
    Optional<String> note = row.get(ProvenanceFields.NOTE);
    started.ifPresent(
        report -> {
          definition.ifPresent(report::definition);
          kinds.ifPresent(report::definitionKinds);
          counted.ifPresent(report::counted);
          clock.ifPresent(report::clock);
          timePoint.ifPresent(report::timePoint);
          followed.ifPresent(report::followed);
          subgroup.ifPresent(report::subgroup);
          phase.ifPresent(report::phase);
          money.ifPresent(report::money);
          test.ifPresent(report::test);
          tested.ifPresent(report::tested);
          standing.ifPresent(report::standing);
          note.ifPresent(report::note);
          report.provenance(ProvenanceFields.read(row));
          report.missing(row.missing());
        });
    return started.flatMap(report -> row.built(report::build, FOLLOWED));
  }

  private static Optional<Subgroup> subgroup(RowReader row) {
    Optional<String> words = row.get(SUBGROUP);
    OptionalDouble from = row.number(DEFECT_FROM);
    OptionalDouble to = row.number(DEFECT_TO);
    if (words.isEmpty() && from.isEmpty() && to.isEmpty()) {
      return Optional.empty();
    }
    if (words.isEmpty()) {
      row.refuse(
          SUBGROUP,
          "missing-value",
          "The row has a band of length but no subgroup. Write what the paper calls it.");
      return Optional.empty();
    }
    row.requireOrder(DEFECT_FROM, DEFECT_TO);
    return row.built(() -> new Subgroup(words.get(), from, to), DEFECT_FROM, DEFECT_TO, SUBGROUP);
  }

  private static Optional<Money> money(RowReader row) {
    Optional<Currency> currency = row.get(CURRENCY);
    OptionalInt year = row.count(PRICE_YEAR);
    if (currency.isEmpty() && year.isPresent() && row.shown(CURRENCY).isEmpty()) {
      row.refuse(
          CURRENCY, "missing-value", "The row has a price year but no currency. Write it here.");
    }
    return currency.map(code -> new Money(code, year));
  }

  static List<RowWriter> write(Study study) {
    return study.outcomes().stream().map(report -> write(study.id(), report)).toList();
  }

  private static RowWriter write(String study, OutcomeReport report) {
    RowWriter row = new RowWriter(SHEET);
    row.put(Keys.STUDY, study);
    if (report.scope() instanceof Scope.AllArms) {
      row.put(Keys.ARM, Keys.ALL);
    } else {
      row.put(Keys.ARM, report.scope().armIds().get(0));
      row.put(AGAINST, report.scope().armIds().stream().skip(1).findFirst());
    }
    row.put(OUTCOME, report.outcome());
    VALUE.write(row, report.value());
    row.put(COUNTED, report.counted());
    row.put(DEFINITION, report.definition());
    if (!report.definitionKinds().isEmpty()) {
      row.put(DEFINITION_KINDS, report.definitionKinds());
    }
    row.put(CLOCK, report.clock());
    TIME_POINT.write(row, report.timePoint());
    row.put(FOLLOWED, report.followed());
    report.subgroup().ifPresent(subgroup -> write(row, subgroup));
    row.put(PHASE, report.phase());
    report.money().ifPresent(money -> write(row, money));
    row.put(TEST, report.test());
    report.tested().ifPresent(tested -> TESTED.write(row, tested));
    if (report.standing() != Standing.COUNTS) {
      row.put(STANDING, report.standing());
    }
    ProvenanceFields.write(row, report.provenance(), report.note());
    row.missing(report.missing());
    return row;
  }

  private static void write(RowWriter row, Subgroup subgroup) {
    row.put(SUBGROUP, subgroup.words());
    row.put(DEFECT_FROM, subgroup.defectFromCentimetres());
    row.put(DEFECT_TO, subgroup.defectToCentimetres());
  }

  private static void write(RowWriter row, Money money) {
    row.put(CURRENCY, money.currency());
    row.put(PRICE_YEAR, money.priceYear());
  }
}
