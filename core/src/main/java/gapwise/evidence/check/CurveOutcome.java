package gapwise.evidence.check;

import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.vocabulary.Outcome;

/** A curve of something that is no time to an event. */
final class CurveOutcome implements CurveRule {
  @Override
  public void check(CurveAt at, Findings findings) {
    Outcome outcome = at.curve().outcome();
    if (outcome.kind() != Outcome.Kind.TIME) {
      findings.impossible(
          at.part("outcome"),
          "curve-of-no-time",
          "'"
              + outcome.label()
              + "' is no time to an event, so no curve can show it. Choose the time that the figure"
              + " shows, such as time-to-union.");
    }
  }
}
