package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.unit.Unit;
import java.util.OptionalDouble;

/**
 * Follow-up too short to see union settle or infection return, and too many lost to it (common
 * practice, no source).
 */
final class FollowUp implements GroupRule {
  private static final double SHORTEST_MONTHS = 12;
  private static final double MOST_LOST = 0.2;

  @Override
  public void check(Group group, Findings findings) {
    OptionalDouble months =
        group
            .baseline()
            .followUp()
            .map(followUp -> followUp.in(Unit.MONTHS).centre())
            .orElse(OptionalDouble.empty());
    if (months.isPresent() && months.getAsDouble() < SHORTEST_MONTHS) {
      findings.doubtful(
          field(group),
          "follow-up-short",
          "Follow-up of "
              + Printed.about(months.getAsDouble())
              + " months is short: infection and refracture come later. Check the number and its"
              + " unit.");
    }
    lost(group, findings);
  }

  private static RecordPart field(Group group) {
    boolean mean =
        group
            .baseline()
            .followUp()
            .map(QuantitySummary::mean)
            .filter(m -> m.isPresent())
            .isPresent();
    return group.part(mean ? "follow_up_mean" : "follow_up_median");
  }

  private static void lost(Group group, Findings findings) {
    if (group.baseline().lostToFollowUp().isEmpty() || group.baseline().patients().isEmpty()) {
      return;
    }
    double share =
        group.baseline().lostToFollowUp().getAsInt()
            / (double) group.baseline().patients().getAsInt();
    if (share > MOST_LOST && share <= 1) {
      findings.doubtful(
          group.part("lost_to_follow_up"),
          "many-lost",
          Printed.about(100 * share)
              + " % were lost to follow-up. Check the number, and which denominators leave them out.");
    }
  }
}
