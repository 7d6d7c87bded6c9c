package gapwise.course;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * A study as if its paper reported of one outcome nothing but its curves, so that the rules that
 * choose numbers choose curves alike: the same filters, clocks, definitions and shared patients. A
 * curve stands there as a report of the time up to which it was read; no page shows that number.
 */
final class CurvesInPlace implements UnaryOperator<Study> {
  private final Outcome outcome;

  CurvesInPlace(Outcome outcome) {
    this.outcome = outcome;
  }

  /** The curve of an arm for the outcome; empty where the study has none. */
  static Optional<PublishedCurve> of(Study study, String arm, Outcome outcome) {
    return study.curves().stream()
        .filter(curve -> curve.arm().equals(arm) && curve.outcome().equals(outcome))
        .findFirst();
  }

  @Override
  public Study apply(Study study) {
    List<OutcomeReport> reports = new ArrayList<>();
    for (PublishedCurve curve : study.curves()) {
      if (curve.outcome().equals(outcome)) {
        reports.add(inPlace(study, curve));
      }
    }
    study.outcomes().stream()
        .filter(report -> !report.outcome().equals(outcome))
        .forEach(reports::add);
    return study
        .but()
        .outcomes(reports)
        .patients(study.patients().stream().map(this::without).toList())
        .build();
  }

  private PatientRow without(PatientRow patient) {
    SortedMap<String, PatientOutcome> others = new TreeMap<>(patient.outcomes());
    others.remove(outcome.code());
    return new PatientRow(
        patient.id(),
        patient.armId(),
        patient.ageYears(),
        patient.sex(),
        patient.bone(),
        patient.segment(),
        patient.infected(),
        patient.followUp(),
        patient.defect(),
        others,
        patient.provenance(),
        patient.missing(),
        patient.note());
  }

  private OutcomeReport inPlace(Study study, PublishedCurve curve) {
    List<OutcomeReport> beside =
        study.outcomes().stream()
            .filter(report -> report.outcome().equals(outcome))
            .filter(report -> report.scope().equals(new Scope.OneArm(curve.arm())))
            .filter(report -> report.subgroup().isEmpty())
            .filter(report -> report.standing() == Standing.COUNTS)
            .toList();
    QuantitySummaryBuilder summary =
        QuantitySummary.with(curve.unit()).mean(curve.lastTime()).standardDeviation(1);
    curve.start().ifPresent(summary::n);
    OutcomeReport.Builder report =
        OutcomeReport.with(
                new Scope.OneArm(curve.arm()), outcome, new ReportedValue.Quantity(summary.build()))
            .provenance(curve.provenance());
    clock(beside).ifPresent(report::clock);
    beside.stream().findFirst().ifPresent(row -> definedAs(row, report));
    return report.build();
  }

  /** The clock of the numbers of the same time, where they agree: a figure names none itself. */
  private static Optional<Clock> clock(List<OutcomeReport> beside) {
    Set<Clock> stated =
        beside.stream().flatMap(report -> report.clock().stream()).collect(Collectors.toSet());
    return stated.size() == 1 ? stated.stream().findFirst() : Optional.empty();
  }

  private static void definedAs(OutcomeReport row, OutcomeReport.Builder report) {
    row.definition().ifPresent(report::definition);
    report.definitionKinds(row.definitionKinds());
    row.counted().ifPresent(report::counted);
  }
}
