package gapwise.evidence.check;

import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Subgroups of one outcome that add up to more than the whole arm. Doubtful only, for subgroups may
 * overlap.
 */
final class SubgroupsWithinTotal implements StudyRule {
  private record Same(Scope scope, String outcome, Optional<Duration> timePoint) {
    static Same of(OutcomeReport report) {
      return new Same(report.scope(), report.outcome().code(), report.timePoint());
    }
  }

  @Override
  public void check(Study study, Findings findings) {
    Map<Same, List<ReportAt>> subgroups = new LinkedHashMap<>();
    Map<Same, ReportAt> wholes = new LinkedHashMap<>();
    for (ReportAt at : ReportAt.counting(study)) {
      if (at.report().value() instanceof ReportedValue.Events) {
        Same same = Same.of(at.report());
        if (at.report().subgroup().isPresent()) {
          subgroups.computeIfAbsent(same, key -> new ArrayList<>()).add(at);
        } else {
          wholes.putIfAbsent(same, at);
        }
      }
    }
    subgroups.forEach(
        (same, parts) -> {
          if (wholes.containsKey(same)) {
            compare(parts, wholes.get(same), findings);
          }
        });
  }

  private static void compare(List<ReportAt> parts, ReportAt whole, Findings findings) {
    int events = parts.stream().mapToInt(at -> count(at).events().orElse(0)).sum();
    int total = parts.stream().mapToInt(at -> count(at).total().orElse(0)).sum();
    EventCount all = count(whole);
    String field =
        events > all.events().orElse(Integer.MAX_VALUE)
            ? "events"
            : total > all.total().orElse(Integer.MAX_VALUE) ? "total" : "";
    if (!field.isEmpty()) {
      boolean byEvents = field.equals("events");
      findings.doubtful(
          whole.part(field),
          "subgroups-exceed-total",
          "The subgroups add up to "
              + (byEvents ? events : total)
              + ", the whole arm has "
              + (byEvents ? all.events() : all.total()).getAsInt()
              + ". Check the numbers, and whether the subgroups overlap.");
    }
  }

  private static EventCount count(ReportAt at) {
    return ((ReportedValue.Events) at.report().value()).count();
  }
}
