package gapwise.evidence.check;

import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.vocabulary.CountedUnit;
import java.util.OptionalInt;

/**
 * A denominator larger than the arm: impossible where what is counted is known and the arm counts
 * the same, doubtful where either is not said, for papers shift between patients and limbs.
 */
final class CountsWithinArm implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    at.group()
        .ifPresent(
            group -> {
              ReportedValue value = at.report().value();
              if (value instanceof ReportedValue.Events events) {
                EventCount count = events.count();
                compare(at, group, "total", count.total(), findings);
                if (count.total().isEmpty()) {
                  compare(at, group, "events", count.events(), findings);
                }
              } else if (value instanceof ReportedValue.Categories categories) {
                compare(at, group, "categories", OptionalInt.of(categories.sum()), findings);
              } else if (value instanceof ReportedValue.Tally tally) {
                compare(at, group, "total", tally.among(), findings);
              } else if (value instanceof ReportedValue.Quantity quantity) {
                compare(at, group, "n", quantity.summary().n(), findings);
              }
              compare(at, group, "followed", at.report().followed(), findings);
            });
  }

  private static void compare(
      ReportAt at, Group group, String field, OptionalInt found, Findings findings) {
    OutcomeReport report = at.report();
    OptionalInt same =
        report.counted().isPresent() ? group.size(report.counted().get()) : OptionalInt.empty();
    OptionalInt size = same.isPresent() ? same : group.largestSize();
    if (found.isEmpty() || size.isEmpty() || found.getAsInt() <= size.getAsInt()) {
      return;
    }
    if (same.isPresent()) {
      findings.impossible(
          at.part(field),
          "more-than-the-arm",
          "Found "
              + found.getAsInt()
              + " "
              + report.counted().map(CountedUnit::label).orElse("")
              + ", but the arm has only "
              + size.getAsInt()
              + ". Check both numbers.");
    } else {
      findings.doubtful(
          at.part(field),
          "more-than-the-patients",
          "Found "
              + found.getAsInt()
              + ", but the arm has "
              + size.getAsInt()
              + ". Say in unit_counted what is counted, and give the arm's limbs or defects if they"
              + " are more than its patients.");
    }
  }
}
