package gapwise.decision.sheet;

import gapwise.answer.MethodLine;
import gapwise.evidence.EventCount;
import gapwise.evidence.ReportedValue;
import java.util.Optional;

/**
 * Events and people behind a number, summed over its rows.
 *
 * @param events 0 or more
 * @param total 1 or more
 */
record Counted(int events, int total) {

  /** Empty where some row tells no count. */
  static Optional<Counted> of(MethodLine line) {
    int events = 0;
    int total = 0;
    for (MethodLine.Weighed one : line.rows()) {
      if (!(one.row().value() instanceof ReportedValue.Events value)
          || value.count().events().isEmpty()
          || value.count().total().isEmpty()) {
        return Optional.empty();
      }
      EventCount count = value.count();
      events += count.events().getAsInt();
      total += count.total().getAsInt();
    }
    return total == 0 ? Optional.empty() : Optional.of(new Counted(events, total));
  }

  /**
   * The largest share that none of so many people leaves possible: 1 - 0.025^(1/n) (exact two-sided
   * 95 % limit of Clopper &amp; Pearson, Biometrika 1934;26:404, for no event).
   *
   * @param people 1 or more
   */
  static double upperLimitOfNone(int people) {
    return 1 - Math.pow(0.025, 1.0 / people);
  }
}
