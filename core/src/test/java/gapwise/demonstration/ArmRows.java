package gapwise.demonstration;

import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Provenance;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** Collects the outcome rows of one arm while its paper is written. Not thread-safe. */
final class ArmRows {
  final StudyPlan study;
  final ArmPlan arm;
  final List<TrueLimb> limbs;
  final Draw draw;
  private final String armId;
  private final List<OutcomeReport> rows = new ArrayList<>();

  /**
   * Starts without a row.
   *
   * @param limbs those followed to the end, first limbs first
   */
  ArmRows(StudyPlan study, ArmPlan arm, String armId, List<TrueLimb> limbs, Draw draw) {
    this.study = study;
    this.arm = arm;
    this.armId = armId;
    this.limbs = List.copyOf(limbs);
    this.draw = draw;
  }

  List<OutcomeReport> rows() {
    return List.copyOf(rows);
  }

  void add(OutcomeReport.Builder row) {
    OutcomeReport report = row.build();
    report
        .definition()
        .map(words -> Scenario.confirmed(study.number(), report.outcome().family(), words))
        .ifPresent(row::definitionKinds);
    rows.add(row.build());
  }

  boolean reports(Habit habit) {
    return study.reports(habit);
  }

  boolean method(String code) {
    return arm.method().equals(code);
  }

  boolean amputation() {
    return arm.method().endsWith("amputation");
  }

  /** The first limb of each patient, for what is counted by patients. */
  List<TrueLimb> patients() {
    return limbs.subList(0, arm.patients() - arm.lost());
  }

  /** A row of events among limbs. */
  OutcomeReport.Builder events(String outcome, List<TrueLimb> of, Predicate<TrueLimb> happened) {
    int events = (int) of.stream().filter(happened).count();
    return row(outcome, new ReportedValue.Events(EventCount.of(events, of.size())))
        .counted(CountedUnit.LIMBS)
        .provenance(printed(events + "/" + of.size()));
  }

  OutcomeReport.Builder row(String outcome, ReportedValue value) {
    return OutcomeReport.with(new Scope.OneArm(armId), Outcome.of(outcome), value);
  }

  /** A row of a quantity, in the style of the paper. */
  OutcomeReport.Builder quantity(
      String outcome,
      Unit unit,
      int decimals,
      List<TrueLimb> of,
      ToDoubleFunction<TrueLimb> value) {
    List<Double> values = of.stream().mapToDouble(value).boxed().toList();
    return row(outcome, new ReportedValue.Quantity(style().print(unit, decimals, values)))
        .provenance(new Provenance(Optional.of(table()), Optional.empty()));
  }

  /** A row of a time that is known in months, in the unit of the paper. */
  OutcomeReport.Builder time(
      String outcome, Clock clock, List<TrueLimb> of, ToDoubleFunction<TrueLimb> months) {
    Unit unit = timeUnit();
    OutcomeReport.Builder row =
        quantity(
            outcome,
            unit,
            unit == Unit.MONTHS ? 1 : 0,
            of,
            limb -> Unit.MONTHS.to(unit, months.applyAsDouble(limb)));
    return reports(Habit.NO_CLOCK)
        ? row.missing(new TreeMap<>(Map.of("clock", Missing.NOT_REPORTED)))
        : row.clock(clock);
  }

  Unit timeUnit() {
    return reports(Habit.DAYS) ? Unit.DAYS : reports(Habit.WEEKS) ? Unit.WEEKS : Unit.MONTHS;
  }

  static Duration at(int months) {
    return Duration.ofMonths(months);
  }

  Provenance printed(String words) {
    return new Provenance(Optional.of(table()), Optional.of(words));
  }

  private String table() {
    return draw.oneOf(List.of("Table 2", "Table 3", "p. 4, Results", "Abstract"));
  }

  /** Two means of three come without a standard deviation. */
  private SummaryStyle style() {
    if (reports(Habit.RANGES) && draw.chance(0.6)) {
      return SummaryStyle.RANGE_ALONE;
    }
    if (reports(Habit.STANDARD_ERRORS) && draw.chance(0.6)) {
      return SummaryStyle.MEAN_AND_ERROR;
    }
    if (reports(Habit.LIMITS_OF_MEANS)) {
      return SummaryStyle.MEAN_AND_LIMITS;
    }
    if (reports(Habit.UNEXPLAINED_SPREAD) && draw.chance(0.6)) {
      return draw.oneOf(
          List.of(
              SummaryStyle.PLUS_MINUS_UNEXPLAINED,
              SummaryStyle.BRACKETS_UNEXPLAINED,
              SummaryStyle.CENTRE_AND_BRACKETS_UNEXPLAINED));
    }
    if (reports(Habit.QUARTILES_OF_MEANS)) {
      return SummaryStyle.MEAN_AND_QUARTILES;
    }
    if (reports(Habit.MEDIANS)) {
      return draw.oneOf(
          List.of(
              SummaryStyle.MEDIAN_AND_QUARTILES,
              SummaryStyle.MEDIAN_AND_RANGE,
              SummaryStyle.MEDIAN_ALONE));
    }
    return draw.oneOf(
        List.of(
            SummaryStyle.MEAN_ALONE,
            SummaryStyle.MEAN_AND_RANGE,
            SummaryStyle.MEAN_AND_DEVIATION,
            SummaryStyle.MEAN_AND_RANGE,
            SummaryStyle.MEAN_AND_DEVIATION));
  }
}
