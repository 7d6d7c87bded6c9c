package gapwise.selection;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Scope;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Optional;

/**
 * Reasons for which a report of an outcome is not a value of one arm that counts, whatever its
 * numbers; asked in this order, the first stands.
 */
enum ReportExclusion {
  /** A paper may print a number twice, or a later paper replace it. */
  COUNTS {
    @Override
    Optional<Reason> against(ArmCase arm, OutcomeReport report) {
      return switch (report.standing()) {
        case COUNTS -> Optional.empty();
        case ALTERNATIVE -> Optional.of(Reason.Plain.ALTERNATIVE);
        case SUPERSEDED -> Optional.of(Reason.Plain.SUPERSEDED);
      };
    }
  },
  /** A difference between two arms says nothing of either. */
  NO_COMPARISON {
    @Override
    Optional<Reason> against(ArmCase arm, OutcomeReport report) {
      return report.scope() instanceof Scope.Comparison
          ? Optional.of(Reason.Plain.COMPARISON)
          : Optional.empty();
    }
  },
  /** One value for several groups together is a value of none of them. */
  ONE_ARM {
    @Override
    Optional<Reason> against(ArmCase arm, OutcomeReport report) {
      int arms = arm.study().arms().size();
      return report.scope() instanceof Scope.AllArms && arms > 1 && !arm.isAllGroups()
          ? Optional.of(new Reason.ValueOfAllArms(arms))
          : Optional.empty();
    }
  },
  /** Months in a frame and months without weight are different things under one outcome. */
  NO_PHASE {
    @Override
    Optional<Reason> against(ArmCase arm, OutcomeReport report) {
      return report.outcome().kind() == Outcome.Kind.PHASE
          ? Optional.of(Reason.Plain.PHASE)
          : Optional.empty();
    }
  };

  abstract Optional<Reason> against(ArmCase arm, OutcomeReport report);

  static Optional<Reason> firstAgainst(ArmCase arm, OutcomeReport report) {
    for (ReportExclusion rule : values()) {
      Optional<Reason> reason = rule.against(arm, report);
      if (reason.isPresent()) {
        return reason;
      }
    }
    return Optional.empty();
  }
}
