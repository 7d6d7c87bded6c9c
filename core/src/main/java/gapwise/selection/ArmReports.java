package gapwise.selection;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Subgroup;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the paper reports of an outcome for one arm, sorted.
 *
 * @param outcome the outcome asked for, or its other side
 * @param wholeArm usable values of the whole arm, as the outcome asked for counts them, if the
 *     whole arm is evidence for the missing length asked for
 * @param subgroupsInRange usable values of parts of the arm whose band of missing length lies
 *     inside the range asked for
 * @param leftOut all other reports, with the reason
 * @param ofNoSuchLength why there are usable values of the whole arm that are no such evidence;
 *     empty where there are none
 */
record ArmReports(
    Outcome outcome,
    List<Candidate> wholeArm,
    List<Candidate> subgroupsInRange,
    List<LeftOut> leftOut,
    Optional<Reason> ofNoSuchLength) {

  ArmReports {
    wholeArm = List.copyOf(wholeArm);
    subgroupsInRange = List.copyOf(subgroupsInRange);
    leftOut = List.copyOf(leftOut);
  }

  /** Reports of the outcome asked for. */
  static ArmReports of(Question question, ArmCase arm) {
    return of(question, question.outcome(), arm);
  }

  /** Reports of the other side of the outcome asked for, turned round; empty if it has none. */
  static Optional<ArmReports> ofOtherSide(Question question, ArmCase arm) {
    return question.outcome().otherSide().map(other -> of(question, other, arm));
  }

  private static ArmReports of(Question question, Outcome outcome, ArmCase arm) {
    List<Candidate> wholeArm = new ArrayList<>();
    List<Candidate> subgroups = new ArrayList<>();
    List<LeftOut> leftOut = new ArrayList<>();
    Optional<Reason> noSuchLength = LengthEvidence.against(question, arm);
    boolean passedOver = false;
    for (OutcomeReport report : arm.study().outcomes()) {
      if (!report.outcome().equals(outcome) || !concerns(report.scope(), arm)) {
        continue;
      }
      Optional<Reason> against =
          ReportExclusion.firstAgainst(arm, report).or(() -> outsideRange(question, report));
      if (against.isPresent()) {
        leftOut.add(arm.leftOut(against.get()));
        continue;
      }
      UsableValue value = UsableValue.of(outcome, report.value());
      if (value instanceof UsableValue.Unusable unusable) {
        leftOut.add(arm.leftOut(unusable.reason()));
      } else if (noSuchLength.isPresent() && report.subgroup().isEmpty()) {
        passedOver = true;
      } else if (value instanceof UsableValue.Usable usable) {
        Optional<ReportedValue> counted =
            outcome.equals(question.outcome())
                ? Optional.of(usable.value())
                : OtherSide.of(usable.value());
        if (counted.isEmpty()) {
          leftOut.add(arm.leftOut(new Reason.FormDoesNotFit(question.outcome())));
        } else {
          (report.subgroup().isPresent() ? subgroups : wholeArm)
              .add(new Candidate(report, counted.get(), usable.countedBack()));
        }
      }
    }
    return new ArmReports(
        outcome, wholeArm, subgroups, leftOut, passedOver ? noSuchLength : Optional.empty());
  }

  private static boolean concerns(Scope scope, ArmCase arm) {
    if (arm.isAllGroups()) {
      return scope instanceof Scope.AllArms;
    }
    return scope.armIds().isEmpty() || scope.armIds().contains(arm.arm().id());
  }

  /** A part of an arm is never taken beside or instead of the whole, unless a range asks for it. */
  private static Optional<Reason> outsideRange(Question question, OutcomeReport report) {
    return report
        .subgroup()
        .filter(part -> question.among().defect().filter(r -> liesIn(part, r)).isEmpty())
        .map(part -> new Reason.PartOfArm(part.words()));
  }

  private static boolean liesIn(Subgroup part, LengthRange range) {
    boolean open = range.toCentimetres() == Double.POSITIVE_INFINITY;
    return (part.defectFromCentimetres().isPresent() || part.defectToCentimetres().isPresent())
        && part.defectFromCentimetres().orElse(0) >= range.fromCentimetres()
        && (open || part.defectToCentimetres().isPresent())
        && part.defectToCentimetres().orElse(Double.POSITIVE_INFINITY) <= range.toCentimetres();
  }
}
