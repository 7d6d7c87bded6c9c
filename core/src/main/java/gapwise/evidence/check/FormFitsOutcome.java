package gapwise.evidence.check;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.vocabulary.Outcome;

/**
 * Numbers in a form in which the outcome is not pooled, such as a mean of an event. Kept, for
 * papers do print them, but asked about, for another outcome is often meant.
 */
final class FormFitsOutcome implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    Outcome outcome = at.report().outcome();
    ReportedValue value = at.report().value();
    boolean always =
        value instanceof ReportedValue.Statement || value instanceof ReportedValue.Effect;
    if (!always && !fits(outcome.kind(), value)) {
      findings.doubtful(
          at.part("outcome"),
          "form-of-another-outcome",
          "'"
              + outcome.label()
              + "' is not usually given in this form. Check whether another outcome is meant: how"
              + " many had an event, how many events there were, and how long something took are"
              + " outcomes of their own.");
    }
  }

  private static boolean fits(Outcome.Kind kind, ReportedValue value) {
    return switch (kind) {
      case EVENT -> value instanceof ReportedValue.Events || value instanceof ReportedValue.Rate;
      case COUNT ->
          value instanceof ReportedValue.Quantity
              || value instanceof ReportedValue.Tally
              || value instanceof ReportedValue.Rate;
      case CATEGORIES -> value instanceof ReportedValue.Categories;
      case TIME, QUANTITY, SCORE, COST, PHASE -> value instanceof ReportedValue.Quantity;
    };
  }
}
