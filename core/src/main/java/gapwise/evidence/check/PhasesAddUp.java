package gapwise.evidence.check;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Phases of treatment whose means do not add up to the whole treatment time within 15 % (common
 * practice, no source). Time in the frame holds distraction and consolidation, so it is left out
 * where those are given.
 */
final class PhasesAddUp implements StudyRule {
  private static final double TOLERANCE = 0.15;

  @Override
  public void check(Study study, Findings findings) {
    List<ReportAt> reports = ReportAt.counting(study);
    for (ReportAt total : reports) {
      if (total.code().equals("total-treatment-time")) {
        List<ReportAt> phases =
            reports.stream()
                .filter(at -> at.code().equals("treatment-phase"))
                .filter(at -> at.report().phase().isPresent())
                .filter(at -> sameGroup(at.report(), total.report()))
                .toList();
        compare(total, phases, findings);
      }
    }
  }

  private static boolean sameGroup(OutcomeReport a, OutcomeReport b) {
    return a.scope().equals(b.scope()) && a.subgroup().equals(b.subgroup());
  }

  private static void compare(ReportAt total, List<ReportAt> phases, Findings findings) {
    boolean inParts =
        phases.stream()
            .map(at -> at.report().phase().orElseThrow())
            .anyMatch(phase -> phase == Phase.DISTRACTION || phase == Phase.CONSOLIDATION);
    List<OptionalDouble> months =
        phases.stream()
            .filter(at -> !inParts || at.report().phase().orElseThrow() != Phase.IN_FRAME)
            .map(PhasesAddUp::mean)
            .toList();
    OptionalDouble whole = mean(total);
    if (months.size() < 2 || whole.isEmpty() || months.stream().anyMatch(OptionalDouble::isEmpty)) {
      return;
    }
    double sum = months.stream().mapToDouble(OptionalDouble::getAsDouble).sum();
    if (Math.abs(sum / whole.getAsDouble() - 1) > TOLERANCE) {
      findings.doubtful(
          total.part("mean"),
          "phases-do-not-add-up",
          "The phases add up to "
              + Printed.about(sum)
              + " months, the whole treatment time is "
              + Printed.about(whole.getAsDouble())
              + " months. Check whether a phase is missing, overlaps another, or is in another"
              + " unit.");
    }
  }

  private static OptionalDouble mean(ReportAt at) {
    Optional<QuantitySummary> summary =
        at.quantity().filter(s -> s.unit().dimension() == Unit.Dimension.TIME);
    return summary.map(s -> s.in(Unit.MONTHS).mean()).orElse(OptionalDouble.empty());
  }
}
