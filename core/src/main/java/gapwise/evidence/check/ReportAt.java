package gapwise.evidence.check;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Standing;
import gapwise.evidence.Study;
import gapwise.evidence.Summary;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One reported outcome and its place in the study.
 *
 * @param study the study
 * @param index its position
 * @param report the report
 */
record ReportAt(Study study, int index, OutcomeReport report) {
  static List<ReportAt> of(Study study) {
    return IntStream.range(0, study.outcomes().size())
        .mapToObj(index -> new ReportAt(study, index, study.outcomes().get(index)))
        .toList();
  }

  /** Only reports that count, without alternatives and superseded ones. */
  static List<ReportAt> counting(Study study) {
    return of(study).stream().filter(at -> at.report.standing() == Standing.COUNTS).toList();
  }

  Part part(String field) {
    return new Part.OfOutcome(study.id(), index, field);
  }

  String code() {
    return report.outcome().code();
  }

  Optional<Summary> quantity() {
    return report.value() instanceof ReportedValue.Quantity quantity
        ? Optional.of(quantity.summary())
        : Optional.empty();
  }

  /** Whose outcome it is; empty for a comparison. */
  Optional<Group> group() {
    if (report.scope() instanceof Scope.OneArm one) {
      return study.arm(one.arm()).map(arm -> new Group(study, Optional.of(arm), arm.baseline()));
    }
    return report.scope() instanceof Scope.AllArms
        ? Optional.of(new Group(study, Optional.empty(), study.whole()))
        : Optional.empty();
  }
}
