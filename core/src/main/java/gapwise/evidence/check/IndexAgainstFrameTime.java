package gapwise.evidence.check;

import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A fixation index that, times the missing length, misses the time in the frame by more than 15 %
 * (common practice, no source): the index may divide by another length.
 */
final class IndexAgainstFrameTime implements StudyRule {
  private static final double TOLERANCE = 0.15;

  @Override
  public void check(Study study, Findings findings) {
    List<ReportAt> reports =
        ReportAt.counting(study).stream().filter(at -> at.report().subgroup().isEmpty()).toList();
    for (ReportAt index : reports) {
      if (index.code().equals("external-fixation-index")) {
        reports.stream()
            .filter(time -> time.code().equals("external-fixation-time"))
            .filter(time -> time.report().scope().equals(index.report().scope()))
            .forEach(time -> compare(index, time, findings));
      }
    }
  }

  private static void compare(ReportAt index, ReportAt time, Findings findings) {
    OptionalDouble monthsPerCentimetre = mean(index, Unit.MONTHS_PER_CENTIMETRE);
    OptionalDouble months = mean(time, Unit.MONTHS);
    OptionalDouble centimetres =
        index
            .group()
            .flatMap(group -> group.baseline().defect())
            .flatMap(DefectLength::centimetres)
            .map(QuantitySummary::mean)
            .orElse(OptionalDouble.empty());
    if (monthsPerCentimetre.isEmpty() || months.isEmpty() || centimetres.isEmpty()) {
      return;
    }
    double expected = monthsPerCentimetre.getAsDouble() * centimetres.getAsDouble();
    if (Math.abs(expected / months.getAsDouble() - 1) > TOLERANCE) {
      findings.doubtful(
          index.part("mean"),
          "index-against-frame-time",
          "The index times the mean missing length is "
              + Printed.about(expected)
              + " months, but the time in the frame is "
              + Printed.about(months.getAsDouble())
              + " months. Check all three, and what the index divides by.");
    }
  }

  private static OptionalDouble mean(ReportAt at, Unit unit) {
    Optional<QuantitySummary> summary =
        at.quantity().filter(s -> s.unit().dimension() == unit.dimension());
    return summary.map(s -> s.in(unit).mean()).orElse(OptionalDouble.empty());
  }
}
