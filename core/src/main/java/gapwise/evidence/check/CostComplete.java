package gapwise.evidence.check;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.vocabulary.Outcome;

/** A cost without its currency, or without the year of its prices and a reason why. */
final class CostComplete implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    boolean cost =
        at.report().outcome().kind() == Outcome.Kind.COST
            && at.report().value() instanceof ReportedValue.Quantity;
    if (!cost) {
      return;
    }
    if (at.report().money().isEmpty()) {
      findings.impossible(
          at.part("currency"),
          "currency-missing",
          "A cost needs its currency, three letters such as EUR. Fill it in.");
    } else if (at.report().money().get().priceYear().isEmpty()
        && !at.report().missing().containsKey("price_year")) {
      findings.doubtful(
          at.part("price_year"),
          "price-year-missing",
          "A cost needs the year of its prices. Fill it in, or write NR if the paper does not say.");
    }
  }
}
