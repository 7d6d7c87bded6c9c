package gapwise.evidence.check;

import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.vocabulary.Outcome;

/** A phase of treatment that is not named, or a phase named for another outcome. */
final class PhaseNamed implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    boolean isPhase = at.report().outcome().kind() == Outcome.Kind.PHASE;
    if (isPhase && at.report().phase().isEmpty()) {
      findings.impossible(
          at.part("phase"), "phase-missing", "The row does not say which phase. Choose one.");
    } else if (!isPhase && at.report().phase().isPresent()) {
      findings.doubtful(
          at.part("phase"),
          "phase-of-another-outcome",
          "A phase is named, but the outcome is '"
              + at.report().outcome().label()
              + "'. Only treatment-phase has phases; check both.");
    }
  }
}
