package gapwise.evidence.check;

import gapwise.evidence.EventCount;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.rule.Printed;
import java.util.Optional;

/**
 * Shares of men, smokers and people with diabetes that are unusual in trauma of the leg, to catch
 * columns that were swapped (common practice, no source; men were 79 % of 1530 patients in
 * Bezstarosti et al., Eur J Trauma Emerg Surg 2021).
 */
final class SharesOutOfTheOrdinary implements GroupRule {
  /** Shares of few people say nothing; our choice. */
  private static final int FEWEST = 10;

  @Override
  public void check(Group group, Findings findings) {
    if (group.largestSize().orElse(FEWEST) < FEWEST) {
      return;
    }
    check(group, "male", group.baseline().male(), 0.5, 1, findings);
    check(group, "smokers", group.baseline().smokers(), 0.001, 0.8, findings);
    check(group, "diabetics", group.baseline().diabetics(), 0, 0.4, findings);
  }

  private static void check(
      Group group,
      String field,
      Optional<EventCount> count,
      double least,
      double most,
      Findings findings) {
    Optional<Double> share = count.flatMap(c -> share(c, group));
    if (share.isPresent() && (share.get() < least || share.get() > most)) {
      findings.doubtful(
          group.part(field),
          "unusual-share",
          "A share of "
              + Printed.about(100 * share.get())
              + " % is unusual for this column in such studies. Check that the number stands in the"
              + " right column and counts who it should.");
    }
  }

  private static Optional<Double> share(EventCount count, Group group) {
    if (count.share().isPresent()) {
      return count.share();
    }
    return count.events().isPresent() && group.baseline().patients().isPresent()
        ? Optional.of(count.events().getAsInt() / (double) group.baseline().patients().getAsInt())
        : Optional.empty();
  }
}
