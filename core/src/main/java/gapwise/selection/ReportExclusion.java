package gapwise.selection;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Optional;

/**
 * Reasons for which a report of an outcome is not a value of one arm that counts, whatever its
 * numbers; asked in this order, the first stands.
 */
public enum ReportExclusion {
  /** A paper may print a number twice, or a later paper replace it. */
  COUNTS {
    @Override
    Optional<Reason> against(Study study, OutcomeReport report) {
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
    Optional<Reason> against(Study study, OutcomeReport report) {
      return report.scope() instanceof Scope.Comparison
          ? Optional.of(Reason.Plain.COMPARISON)
          : Optional.empty();
    }
  },
  /** One value for several methods together is a value of none. */
  ONE_ARM {
    @Override
    Optional<Reason> against(Study study, OutcomeReport report) {
      return report.scope() instanceof Scope.AllArms && study.arms().size() > 1
          ? Optional.of(new Reason.ValueOfAllArms(study.arms().size()))
          : Optional.empty();
    }
  },
  /** Months in a frame and months without weight are different things under one outcome. */
  NO_PHASE {
    @Override
    Optional<Reason> against(Study study, OutcomeReport report) {
      return report.outcome().kind() == Outcome.Kind.PHASE
          ? Optional.of(Reason.Plain.PHASE)
          : Optional.empty();
    }
  };

  abstract Optional<Reason> against(Study study, OutcomeReport report);

  static Optional<Reason> firstAgainst(Study study, OutcomeReport report) {
    for (ReportExclusion rule : values()) {
      Optional<Reason> reason = rule.against(study, report);
      if (reason.isPresent()) {
        return reason;
      }
    }
    return Optional.empty();
  }
}
