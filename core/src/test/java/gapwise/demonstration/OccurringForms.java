package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import gapwise.evidence.Baseline;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;

/** Collects named checks that a form of reporting occurs somewhere in a body of studies. */
final class OccurringForms {
  private final List<Study> studies;
  private final List<DynamicTest> checks = new ArrayList<>();

  OccurringForms(List<Study> studies) {
    this.studies = studies;
  }

  Stream<DynamicTest> checks() {
    return checks.stream();
  }

  /** The counts of a row of events. */
  static Optional<EventCount> events(OutcomeReport row) {
    return row.value() instanceof ReportedValue.Events events
        ? Optional.of(events.count())
        : Optional.empty();
  }

  void study(String form, Predicate<Study> occurs) {
    checks.add(dynamicTest(form, () -> assertTrue(studies.stream().anyMatch(occurs))));
  }

  void row(String form, Predicate<OutcomeReport> occurs) {
    study(form, study -> study.outcomes().stream().anyMatch(occurs));
  }

  void count(String form, Predicate<EventCount> occurs) {
    row(form, row -> events(row).filter(occurs).isPresent());
  }

  void quantity(String form, String outcome, Predicate<QuantitySummary> occurs) {
    row(
        form,
        row ->
            row.outcome().code().equals(outcome)
                && row.value() instanceof ReportedValue.Quantity quantity
                && occurs.test(quantity.summary()));
  }

  void baseline(String form, Predicate<Baseline> occurs) {
    study(form, study -> study.arms().stream().anyMatch(arm -> occurs.test(arm.baseline())));
  }

  void defect(String form, Predicate<DefectLength> occurs) {
    baseline(form, baseline -> baseline.defect().filter(occurs).isPresent());
  }

  void length(String form, Predicate<QuantitySummary> occurs) {
    defect(form, defect -> defect.summary().filter(occurs).isPresent());
  }
}
