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
import java.util.Set;
import java.util.stream.Collectors;

/**
 * From where the times of all rows are counted. Times on different clocks are never pooled: a clock
 * that was asked for holds; else, for an outcome that means nothing without its clock, the one that
 * most arms state, and of equals the one that starts first in the course of treatment. A value that
 * states no clock stands with the clock that most arms state, unless the question says otherwise:
 * silence is no reason to leave a series out, nor to take it for several clocks in turn.
 *
 * @param chosen the clock that rows must be on; empty where it does not matter, or where no report
 *     states one
 * @param present clocks of usable reports with the number of arms that have one, most first
 * @param most the clock that most arms state; empty where none states any
 * @param silentStay whether a report that states no clock is taken
 */
record Clocks(
    Optional<Clock> chosen, List<Present> present, Optional<Clock> most, boolean silentStay) {

  static Clocks settle(Question question, Collection<ArmReports> arms) {
    Map<Clock, Integer> counts = new EnumMap<>(Clock.class);
    for (ArmReports arm : arms) {
      arm.wholeArm().stream()
          .flatMap(candidate -> candidate.clock().stream())
          .collect(Collectors.toSet())
          .forEach(clock -> counts.merge(clock, 1, Integer::sum));
    }
    // Ties go to the constant that is declared first, since the map iterates in that order.
    Optional<Clock> most =
        counts.entrySet().stream()
            .max(
                Comparator.comparingInt((Map.Entry<Clock, Integer> entry) -> entry.getValue())
                    .thenComparing(Map.Entry::getKey, Comparator.reverseOrder()))
            .map(Map.Entry::getKey);
    Optional<Clock> chosen =
        question.clock().or(() -> question.outcome().needsClock() ? most : Optional.empty());
    List<Present> present =
        counts.entrySet().stream()
            .map(entry -> Present.of(entry.getKey(), entry.getValue()))
            .sorted(Comparator.comparingInt(Present::arms).reversed())
            .toList();
    return new Clocks(chosen, present, most, silentStay(question, chosen, most));
  }

  private static boolean silentStay(
      Question question, Optional<Clock> chosen, Optional<Clock> most) {
    boolean matters = question.outcome().needsClock() || question.clock().isPresent();
    if (!matters) {
      return true;
    }
    return question
        .unstatedClock()
        .map(rule -> rule == UnstatedClock.KEEP)
        // An outcome such as months in a frame has one origin, which papers need not name.
        .orElse(!question.outcome().needsClock() || most.isEmpty() || most.equals(chosen));
  }

  /** How many rows do not say from when they count; 0 where that does not matter. */
  static int silent(Question question, List<SelectedRow> rows) {
    return question.outcome().needsClock()
        ? (int) rows.stream().filter(row -> row.clock().isEmpty()).count()
        : 0;
  }

  /**
   * The clock of a list of patients, which has none of its own: that of the values that the paper
   * gives for the same arm, where they agree.
   */
  static Optional<Clock> ofPatients(ArmReports arm) {
    Set<Clock> stated =
        arm.wholeArm().stream()
            .flatMap(candidate -> candidate.clock().stream())
            .collect(Collectors.toSet());
    return stated.size() == 1 ? stated.stream().findFirst() : Optional.empty();
  }

  /**
   * Why a value cannot stand beside the others.
   *
   * @param report the report; empty for the list of patients
   * @param clock where it starts; empty where that is not said
   */
  Optional<Reason> against(Optional<OutcomeReport> report, Optional<Clock> clock) {
    if (clock.isEmpty()) {
      return silentStay
          ? Optional.empty()
          : Optional.of(new Incomparable.ClockNotStated(report, most.filter(one -> !isTaken(one))));
    }
    return chosen.isEmpty() || isTaken(clock.get())
        ? Optional.empty()
        : Optional.of(
            new Incomparable.OtherClock(ReportWords.of(report), clock.get(), chosen.get()));
  }

  private boolean isTaken(Clock clock) {
    return chosen.equals(Optional.of(clock));
  }
}
