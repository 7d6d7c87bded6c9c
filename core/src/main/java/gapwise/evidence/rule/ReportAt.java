package gapwise.evidence.rule;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Standing;
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
public record ReportAt(Study study, int index, OutcomeReport report) {
  public static List<ReportAt> of(Study study) {
    return IntStream.range(0, study.outcomes().size())
        .mapToObj(index -> new ReportAt(study, index, study.outcomes().get(index)))
        .toList();
  }

  /** Only reports that count, without alternatives and superseded ones. */
  public static List<ReportAt> counting(Study study) {
    return of(study).stream().filter(at -> at.report.standing() == Standing.COUNTS).toList();
  }

  public RecordPart part(String field) {
    return new RecordPart.OfOutcome(study.id(), index, field);
  }

  public String code() {
    return report.outcome().code();
  }

  public Optional<QuantitySummary> quantity() {
    return report.value() instanceof ReportedValue.Quantity quantity
        ? Optional.of(quantity.summary())
        : Optional.empty();
  }

  /** Whose outcome it is; empty for a comparison. */
  public Optional<Group> group() {
    if (report.scope() instanceof Scope.OneArm one) {
      return study.arm(one.arm()).map(arm -> new Group(study, Optional.of(arm), arm.baseline()));
    }
    return report.scope() instanceof Scope.AllArms
        ? Optional.of(new Group(study, Optional.empty(), study.whole()))
        : Optional.empty();
  }
}
