package gapwise.selection;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.vocabulary.Clock;
import gapwise.selection.Selection.Present;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * From where the times of all rows are counted. Times on different clocks are never pooled: a clock
 * that was asked for holds; else, for an outcome that means nothing without its clock, the one that
 * most arms report, and of equals the one that starts first in the course of treatment.
 *
 * @param chosen the clock that rows must be on; empty where it does not matter, or where no report
 *     states one
 * @param present clocks of usable reports with the number of arms that have one, most first
 * @param required whether a report that states no clock is left out
 */
record Clocks(Optional<Clock> chosen, List<Present> present, boolean required) {

  static Clocks settle(Question question, Collection<ArmReports> arms) {
    Map<Clock, Integer> counts = new EnumMap<>(Clock.class);
    for (ArmReports arm : arms) {
      arm.wholeArm().stream()
          .flatMap(candidate -> candidate.clock().stream())
          .collect(Collectors.toSet())
          .forEach(clock -> counts.merge(clock, 1, Integer::sum));
    }
    boolean needed = question.outcome().needsClock();
    Optional<Clock> chosen = question.clock();
    if (chosen.isEmpty() && needed) {
      // Ties go to the constant that is declared first, since the map iterates in that order.
      chosen =
          counts.entrySet().stream()
              .max(
                  Comparator.comparingInt((Map.Entry<Clock, Integer> entry) -> entry.getValue())
                      .thenComparing(Map.Entry::getKey, Comparator.reverseOrder()))
              .map(Map.Entry::getKey);
    }
    List<Present> present =
        counts.entrySet().stream()
            .map(entry -> Present.of(entry.getKey(), entry.getValue()))
            .sorted(Comparator.comparingInt(Present::arms).reversed())
            .toList();
    return new Clocks(chosen, present, needed && chosen.isPresent());
  }

  /**
   * Why a value cannot stand beside the others.
   *
   * @param report the report; empty for the list of patients
   */
  Optional<Reason> against(Optional<OutcomeReport> report) {
    Optional<Clock> clock = report.flatMap(OutcomeReport::clock);
    if (chosen.isEmpty() || clock.equals(chosen) || (clock.isEmpty() && !required)) {
      return Optional.empty();
    }
    return Optional.of(
        clock.isEmpty()
            ? new Reason.ClockNotStated(report, chosen.get())
            : new Reason.OtherClock(report.get(), clock.get(), chosen.get()));
  }
}
