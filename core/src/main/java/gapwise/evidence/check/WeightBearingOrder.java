package gapwise.evidence.check;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.Subgroup;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.PatientRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Milestones of weight bearing in an order in which nobody lives through them, such as full before
 * partial weight, on one clock.
 */
final class WeightBearingOrder implements StudyRule {
  private static final List<String> IN_ORDER =
      List.of(
          "time-to-partial-weight-bearing",
          "time-to-full-weight-bearing-in-support",
          "time-to-full-weight-bearing",
          "time-to-unsupported-weight-bearing");

  /** Milestones that can be compared: of the same patients, on one clock. */
  private record Walk(Scope scope, Optional<Subgroup> subgroup, Optional<Clock> clock) {
    static Walk of(OutcomeReport report) {
      return new Walk(report.scope(), report.subgroup(), report.clock());
    }
  }

  @Override
  public void check(Study study, Findings findings) {
    Map<Walk, List<ReportAt>> walks =
        ReportAt.counting(study).stream()
            .filter(at -> IN_ORDER.contains(at.code()))
            .collect(
                Collectors.groupingBy(
                    at -> Walk.of(at.report()), LinkedHashMap::new, Collectors.toList()));
    for (List<ReportAt> milestones : walks.values()) {
      for (ReportAt later : milestones) {
        milestones.stream()
            .filter(earlier -> isEarlier(earlier.code(), later.code()))
            .forEach(earlier -> compare(earlier, later, findings));
      }
    }
    study.patients().forEach(patient -> check(study, patient, findings));
  }

  private static boolean isEarlier(String a, String b) {
    return IN_ORDER.indexOf(a) < IN_ORDER.indexOf(b);
  }

  private static void compare(ReportAt earlier, ReportAt later, Findings findings) {
    OptionalDouble before = months(earlier);
    OptionalDouble after = months(later);
    if (before.isPresent() && after.isPresent() && before.getAsDouble() > after.getAsDouble()) {
      findings.doubtful(
          later.part(
              later.quantity().filter(s -> s.mean().isPresent()).isPresent() ? "mean" : "median"),
          "weight-bearing-order",
          message(
              later.report().outcome().label(),
              after.getAsDouble(),
              earlier.report().outcome().label(),
              before.getAsDouble()));
    }
  }

  private static OptionalDouble months(ReportAt at) {
    Optional<QuantitySummary> summary =
        at.quantity().filter(s -> s.unit().dimension() == Unit.Dimension.TIME);
    return summary.map(s -> s.in(Unit.MONTHS).centre()).orElse(OptionalDouble.empty());
  }

  private static void check(Study study, PatientRow patient, Findings findings) {
    for (int later = 1; later < IN_ORDER.size(); later++) {
      for (int earlier = 0; earlier < later; earlier++) {
        OptionalDouble before = months(patient, IN_ORDER.get(earlier));
        OptionalDouble after = months(patient, IN_ORDER.get(later));
        if (before.isPresent() && after.isPresent() && before.getAsDouble() > after.getAsDouble()) {
          findings.doubtful(
              PatientRule.part(study, patient, IN_ORDER.get(later).replace('-', '_')),
              "weight-bearing-order",
              message(
                  IN_ORDER.get(later),
                  after.getAsDouble(),
                  IN_ORDER.get(earlier),
                  before.getAsDouble()));
        }
      }
    }
  }

  private static OptionalDouble months(PatientRow patient, String outcome) {
    return patient.outcomes().get(outcome) instanceof PatientOutcome.Measured measured
            && measured.unit().dimension() == Unit.Dimension.TIME
        ? OptionalDouble.of(measured.unit().to(Unit.MONTHS, measured.value()))
        : OptionalDouble.empty();
  }

  private static String message(String later, double after, String earlier, double before) {
    return "'"
        + later
        + "' at "
        + Printed.about(after)
        + " months comes before '"
        + earlier
        + "' at "
        + Printed.about(before)
        + " months. Check both, and whether they start on one clock.";
  }
}
