package gapwise.selection;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Definition;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Subgroup;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Reason.PassedOver.For;
import gapwise.selection.SelectedRow.Basis;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Takes the one value that speaks for an arm, in this order: patients described one by one, where
 * they answer a question about a range of lengths better; the reported value of the whole arm; the
 * sum of patients; a part of the arm that lies in the range. Everything passed over is left out
 * with its reason. Used for one arm.
 */
final class ArmChoice {
  /**
   * A value that says from when it counts goes before one that does not. The last look at patients
   * counts; a report without a time point speaks of the end of follow-up. Of two at the same time,
   * counts of events go before rates, a value with a spread before one without, and the larger
   * group before the smaller.
   */
  private static final Comparator<Candidate> BEST_LAST =
      Comparator.<Candidate, Boolean>comparing(ArmChoice::clockKnown)
          .thenComparingDouble(ArmChoice::months)
          .thenComparing(candidate -> !(candidate.value() instanceof ReportedValue.Rate))
          .thenComparing(ArmChoice::hasSpread)
          .thenComparingInt(ArmChoice::size);

  private final Question question;
  private final Clocks clocks;
  private final Currencies currencies;
  private final CountForms forms;
  private final ArmCase arm;
  private final List<LeftOut> leftOut = new ArrayList<>();

  ArmChoice(
      Question question, Clocks clocks, Currencies currencies, CountForms forms, ArmCase arm) {
    this.question = question;
    this.clocks = clocks;
    this.currencies = currencies;
    this.forms = forms;
    this.arm = arm;
  }

  /** What was passed over so far. */
  List<LeftOut> leftOut() {
    return List.copyOf(leftOut);
  }

  Optional<SelectedRow> choose(ArmReports reports) {
    leftOut.addAll(reports.leftOut());
    List<Candidate> wholeArm = comparable(reports.wholeArm());
    List<Candidate> parts = comparable(reports.subgroupsInRange());
    Optional<Clock> ofPatients = Clocks.ofPatients(reports);
    Optional<PatientSum> patients = comparablePatients(reports.outcome(), ofPatients);
    if (patients.filter(PatientSum::better).isPresent()) {
      leaveOut(wholeArm, For.PATIENTS_IN_RANGE);
      leavePartsOut(parts);
      return patients.map(sum -> row(sum, reports.outcome(), ofPatients));
    }
    if (!wholeArm.isEmpty()) {
      leavePartsOut(parts);
      return Optional.of(reported(best(wholeArm)));
    }
    if (patients.isPresent()) {
      leavePartsOut(parts);
      return patients.map(sum -> row(sum, reports.outcome(), ofPatients));
    }
    if (!parts.isEmpty()) {
      return Optional.of(part(best(parts)));
    }
    reports.ofNoSuchLength().ifPresent(this::leaveOut);
    if (leftOut.isEmpty() && isDrawn(reports.outcome())) {
      leaveOut(Reason.Plain.CURVE_ALONE);
    }
    if (leftOut.isEmpty() && isDescribed(reports.outcome())) {
      leaveOut(LengthEvidence.against(question, arm).orElseGet(this::nothingToTake));
    }
    return Optional.empty();
  }

  private List<Candidate> comparable(List<Candidate> candidates) {
    List<Candidate> kept = new ArrayList<>();
    for (Candidate candidate : candidates) {
      Optional<Reason> reason =
          against(Optional.of(candidate.report()), candidate.clock())
              .or(() -> forms.against(candidate));
      reason.ifPresentOrElse(this::leaveOut, () -> kept.add(candidate));
    }
    return kept;
  }

  private Optional<PatientSum> comparablePatients(Outcome outcome, Optional<Clock> clock) {
    Optional<PatientSum> patients = PatientSum.of(question, outcome, arm).map(forms::inForm);
    if (patients.isEmpty()) {
      return patients;
    }
    Optional<Reason> reason = against(Optional.empty(), clock);
    reason.ifPresent(this::leaveOut);
    return reason.isPresent() ? Optional.empty() : patients;
  }

  private Optional<Reason> against(Optional<OutcomeReport> report, Optional<Clock> clock) {
    return clocks.against(report, clock).or(() -> currencies.against(report));
  }

  private Candidate best(List<Candidate> candidates) {
    Candidate best =
        candidates.stream().reduce((a, b) -> BEST_LAST.compare(a, b) >= 0 ? a : b).get();
    List<Candidate> others = new ArrayList<>(candidates);
    others.remove(best);
    for (Candidate other : others) {
      leaveOut(
          new Reason.PassedOver(
              other.report(), months(other) < months(best) ? For.LATER : For.ANOTHER));
    }
    return best;
  }

  private static boolean clockKnown(Candidate candidate) {
    return !candidate.report().outcome().needsClock() || candidate.clock().isPresent();
  }

  private static double months(Candidate candidate) {
    return candidate.report().timePoint().map(Duration::months).orElse(Double.POSITIVE_INFINITY);
  }

  private static boolean hasSpread(Candidate candidate) {
    return !(candidate.value() instanceof ReportedValue.Quantity quantity)
        || SpreadBasis.of(quantity.summary(), Conversions.ALL) != SpreadBasis.NONE;
  }

  private static int size(Candidate candidate) {
    if (candidate.value() instanceof ReportedValue.Events events) {
      return events.count().total().orElse(0);
    }
    if (candidate.value() instanceof ReportedValue.Quantity quantity) {
      return quantity.summary().n().orElse(0);
    }
    if (candidate.value() instanceof ReportedValue.Tally tally) {
      return tally.among().orElse(0);
    }
    return candidate.value() instanceof ReportedValue.Categories categories ? categories.sum() : 0;
  }

  private SelectedRow reported(Candidate taken) {
    return row(
        taken.value(),
        taken.basis(),
        taken.report().outcome(),
        Optional.of(taken.report()),
        taken.clock(),
        ArmDefect.of(arm.study(), arm.arm()));
  }

  private SelectedRow part(Candidate taken) {
    return row(
        taken.value(),
        Basis.SUBGROUP,
        taken.report().outcome(),
        Optional.of(taken.report()),
        taken.clock(),
        Optional.of(bandOf(taken.report().subgroup().orElseThrow())));
  }

  private SelectedRow row(PatientSum patients, Outcome outcome, Optional<Clock> clock) {
    return row(
        patients.value(), patients.basis(), outcome, Optional.empty(), clock, patients.defect());
  }

  private SelectedRow row(
      ReportedValue value,
      Basis basis,
      Outcome counted,
      Optional<OutcomeReport> report,
      Optional<Clock> clock,
      Optional<ArmDefect> defect) {
    return new SelectedRow(
        arm.study(),
        arm.arm(),
        arm.study().citation().label(),
        value,
        basis,
        Optional.of(counted).filter(other -> !other.equals(question.outcome())),
        report,
        Definition.of(arm.study(), report, question.outcome()),
        clock,
        defect,
        arm.kept().version());
  }

  /** A part of an arm is known by its band alone; it has no mean. */
  private static ArmDefect bandOf(Subgroup part) {
    double from = part.defectFromCentimetres().orElse(0);
    OptionalDouble to = part.defectToCentimetres();
    Optional<QuantitySummary> band =
        to.isPresent()
            ? Optional.of(
                QuantitySummary.with(Unit.CENTIMETRES)
                    .minimum(from)
                    .maximum(to.getAsDouble())
                    .build())
            : Optional.empty();
    DefectLength length =
        new DefectLength(
            band,
            band.isEmpty() && from > 0 ? OptionalDouble.of(from) : OptionalDouble.empty(),
            List.of(),
            Optional.of(part.words()),
            Optional.empty(),
            Optional.empty());
    return new ArmDefect(length, ArmDefect.Origin.REPORTED_FOR_ARM, List.of());
  }

  /** Whether the paper shows the outcome as a curve. */
  private boolean isDrawn(Outcome outcome) {
    return arm.study().curves().stream()
        .anyMatch(curve -> curve.arm().equals(arm.arm().id()) && curve.outcome().equals(outcome));
  }

  private boolean isDescribed(Outcome outcome) {
    return arm.patients().stream()
        .anyMatch(patient -> patient.outcomes().containsKey(outcome.code()));
  }

  private Reason nothingToTake() {
    return question.among().defect().isPresent()
        ? Reason.Plain.NO_PATIENTS_IN_RANGE
        : Reason.Plain.NO_PATIENT_KNOWN;
  }

  private void leavePartsOut(List<Candidate> parts) {
    leaveOut(parts, For.WHOLE_ARM);
  }

  private void leaveOut(List<Candidate> candidates, For better) {
    candidates.forEach(one -> leaveOut(new Reason.PassedOver(one.report(), better)));
  }

  private void leaveOut(Reason reason) {
    leftOut.add(arm.leftOut(reason));
  }
}
