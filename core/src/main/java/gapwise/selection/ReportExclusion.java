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
        case ALTERNATIVE ->
            because("another-report", "Another report of the same number was chosen to count.");
        case SUPERSEDED -> because("superseded", "A later report replaced this number.");
      };
    }
  },
  /** A difference between two arms says nothing of either. */
  NO_COMPARISON {
    @Override
    Optional<Reason> against(Study study, OutcomeReport report) {
      return report.scope() instanceof Scope.Comparison
          ? because(
              "comparison-only",
              "The paper gives a comparison of two arms and no value of each arm.")
          : Optional.empty();
    }
  },
  /** One value for several methods together is a value of none. */
  ONE_ARM {
    @Override
    Optional<Reason> against(Study study, OutcomeReport report) {
      return report.scope() instanceof Scope.AllArms && study.arms().size() > 1
          ? because(
              "value-for-all-arms",
              "The paper gives one value for all its " + study.arms().size() + " arms together.")
          : Optional.empty();
    }
  },
  /** Months in a frame and months without weight are different things under one outcome. */
  NO_PHASE {
    @Override
    Optional<Reason> against(Study study, OutcomeReport report) {
      return report.outcome().kind() == Outcome.Kind.PHASE
          ? because(
              "phase-of-treatment",
              "Phases of treatment are shown side by side along its course and never pooled.")
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

  private static Optional<Reason> because(String code, String message) {
    return Optional.of(new Reason(code, message));
  }
}
