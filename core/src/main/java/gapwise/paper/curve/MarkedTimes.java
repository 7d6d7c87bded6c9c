package gapwise.paper.curve;

import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Steps;
import gapwise.synthesis.survival.PatientTime;
import gapwise.synthesis.survival.PatientTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Times of patients where the curve marks everybody last seen: each drop then tells its events from
 * the number still followed, since the share falls by d/n of itself (Kaplan and Meier 1958). Holds
 * only if every drop is a whole number of patients and every number at risk comes out.
 */
final class MarkedTimes {
  /** A drop may miss a whole number of patients by so much of one patient. */
  private static final double WHOLE = 0.2;

  private final List<PatientTime> patients = new ArrayList<>();
  private int left;

  private MarkedTimes(int patients) {
    left = patients;
  }

  static Optional<PatientTimes> of(Steps steps, Reported reported) {
    MarkedTimes work = new MarkedTimes(reported.patients());
    boolean whole = work.walk(steps, reported);
    if (!whole || work.left < 0) {
      return Optional.empty();
    }
    double end = steps.end();
    for (double seen : reported.seenLast()) {
      end = Math.max(end, seen);
    }
    // Whoever is left at the end was last seen there; a mark for them is usual, not sure.
    for (; work.left > 0; work.left--) {
      work.patients.add(new PatientTime(end, false));
    }
    PatientTimes times = PatientTimes.of(work.patients);
    return agrees(times, reported) ? Optional.of(times) : Optional.empty();
  }

  private boolean walk(Steps steps, Reported reported) {
    List<Double> marks = reported.seenLast().stream().sorted().toList();
    int next = 0;
    double before = 1;
    for (DataPoint corner : steps.corners()) {
      // At one time events come before patients last seen then.
      while (next < marks.size() && marks.get(next) < corner.x() - slack(steps)) {
        next = lose(marks, next);
      }
      double drop = before > 0 ? left * (before - corner.y()) / before : 0;
      long events = Math.round(drop);
      if (Math.abs(drop - events) > WHOLE || events > left) {
        return false;
      }
      for (long i = 0; i < events; i++) {
        patients.add(new PatientTime(corner.x(), true));
      }
      left -= (int) events;
      before = events > 0 ? corner.y() : before;
    }
    while (next < marks.size() && left > 0) {
      next = lose(marks, next);
    }
    return next == marks.size();
  }

  private int lose(List<Double> marks, int next) {
    patients.add(new PatientTime(marks.get(next), false));
    left--;
    return next + 1;
  }

  private static double slack(Steps steps) {
    return 1e-3 * steps.end();
  }

  private static boolean agrees(PatientTimes times, Reported reported) {
    double slack = 1e-3 * times.longest();
    for (int i = 0; i < reported.times().size(); i++) {
      double time = reported.times().get(i);
      long followed = times.patients().stream().filter(p -> p.time() >= time - slack).count();
      long after = times.patients().stream().filter(p -> p.time() > time + slack).count();
      int printed = reported.atRisk().get(i);
      if (printed > followed || printed < after) {
        return false;
      }
    }
    return reported.events().isEmpty() || reported.events().getAsInt() == times.events();
  }
}
