package gapwise.evidence.check;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.Subgroup;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Phase;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Two arms with the same standard deviation but different means, which is more often a slip of
 * copying than chance (common practice, no source).
 */
final class IdenticalSpreads implements StudyRule {
  private record Question(
      String outcome,
      Optional<String> definition,
      Optional<Subgroup> subgroup,
      Optional<Phase> phase,
      Optional<Duration> timePoint,
      Unit unit,
      double deviation) {
    static Question of(OutcomeReport report, QuantitySummary summary) {
      return new Question(
          report.outcome().code(),
          report.definition(),
          report.subgroup(),
          report.phase(),
          report.timePoint(),
          summary.unit(),
          summary.standardDeviation().orElseThrow());
    }
  }

  @Override
  public void check(Study study, Findings findings) {
    Map<Question, ReportAt> first = new HashMap<>();
    for (ReportAt at : ReportAt.counting(study)) {
      at.quantity()
          .filter(IdenticalSpreads::hasSpread)
          .ifPresent(
              summary -> {
                ReportAt before = first.putIfAbsent(Question.of(at.report(), summary), at);
                if (before != null) {
                  compare(before, at, findings);
                }
              });
    }
  }

  private static boolean hasSpread(QuantitySummary summary) {
    return summary.mean().isPresent()
        && summary.standardDeviation().isPresent()
        && summary.standardDeviation().getAsDouble() > 0;
  }

  private static void compare(ReportAt first, ReportAt second, Findings findings) {
    QuantitySummary a = first.quantity().orElseThrow();
    QuantitySummary b = second.quantity().orElseThrow();
    boolean suspicious =
        !first.report().scope().equals(second.report().scope()) && !a.mean().equals(b.mean());
    if (suspicious) {
      findings.doubtful(
          second.part("sd"),
          "identical-sd",
          "SD "
              + Printed.number(b.standardDeviation().getAsDouble())
              + " is the same in arms "
              + String.join(", ", first.report().scope().armIds())
              + " and "
              + String.join(", ", second.report().scope().armIds())
              + " although the means differ. Check that neither was copied.");
    }
  }
}
