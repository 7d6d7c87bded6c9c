package gapwise.paper.curve;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the paper prints about a curve.
 *
 * @param patients at the start
 * @param times of the numbers at risk, in the unit of the curve, rising
 * @param atRisk one for each time
 * @param seenLast times at which strokes on the curve mark patients last seen; empty if none are
 * @param events in all, if told
 * @param median in the unit of the curve, if told
 */
public record Reported(
    int patients,
    List<Double> times,
    List<Integer> atRisk,
    List<Double> seenLast,
    OptionalInt events,
    OptionalDouble median) {
  /** Far above any published curve. */
  private static final int MOST_PATIENTS = 1_000_000;

  /**
   * Checks what a person gave.
   *
   * @throws WrongInputException with every reason
   */
  public Reported {
    times = List.copyOf(times);
    atRisk = List.copyOf(atRisk);
    seenLast = List.copyOf(seenLast);
    List<Problem> problems = new ArrayList<>();
    if (patients < 1 || patients > MOST_PATIENTS) {
      problems.add(
          new Problem("patients", "out-of-range", "The curve needs the number of patients."));
    }
    if (times.size() != atRisk.size()) {
      problems.add(
          new Problem("atRisk", "times-missing", "Give one number at risk for each time."));
    } else {
      check(patients, times, atRisk, problems);
    }
    if (events.isPresent() && (events.getAsInt() < 0 || events.getAsInt() > patients)) {
      problems.add(
          new Problem("events", "events-exceed-total", "There are more events than patients."));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems);
    }
  }

  private static void check(
      int patients, List<Double> times, List<Integer> atRisk, List<Problem> problems) {
    for (int i = 0; i < times.size(); i++) {
      double time = times.get(i);
      int before = i == 0 ? patients : atRisk.get(i - 1);
      String where = "atRisk[" + i + "]";
      if (!(time >= 0 && Double.isFinite(time)) || i > 0 && time <= times.get(i - 1)) {
        problems.add(
            new Problem(where, "times-not-sorted", "The time " + time + " stands out of order."));
      }
      if (atRisk.get(i) < 0 || atRisk.get(i) > before) {
        problems.add(
            new Problem(
                where,
                "at-risk-rises",
                "The number at risk "
                    + atRisk.get(i)
                    + " follows "
                    + before
                    + ", but it can only"
                    + " fall."));
      }
    }
    if (!times.isEmpty() && times.get(0) == 0 && atRisk.get(0) != patients) {
      problems.add(
          new Problem(
              "atRisk[0]",
              "patients-differ",
              "The number at risk at time 0 is "
                  + atRisk.get(0)
                  + ", but there are "
                  + patients
                  + " patients."));
    }
  }
}
