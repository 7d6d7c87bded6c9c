package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.unit.Unit;
import java.util.Optional;
import java.util.OptionalDouble;

/** A mean follow-up that ends before the mean time to union. */
final class FollowUpAgainstUnion implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    Optional<QuantitySummary> union =
        at.quantity()
            .filter(summary -> at.code().equals("time-to-union"))
            .filter(summary -> summary.unit().dimension() == Unit.Dimension.TIME);
    OptionalDouble followUp =
        at.group()
            .flatMap(group -> group.baseline().followUp())
            .map(summary -> summary.in(Unit.MONTHS).mean())
            .orElse(OptionalDouble.empty());
    if (union.isEmpty() || followUp.isEmpty()) {
      return;
    }
    OptionalDouble months = union.get().in(Unit.MONTHS).mean();
    if (months.isPresent() && months.getAsDouble() > followUp.getAsDouble()) {
      findings.doubtful(
          at.part("mean"),
          "union-after-follow-up",
          "The mean time to union is "
              + Printed.about(months.getAsDouble())
              + " months, longer than the mean follow-up of "
              + Printed.about(followUp.getAsDouble())
              + " months. Check both and their units.");
    }
  }
}
