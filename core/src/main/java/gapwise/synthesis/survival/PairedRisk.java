package gapwise.synthesis.survival;

import java.util.ArrayList;
import java.util.List;

/**
 * Two groups side by side at each time at which an event came in either: who was at risk and who
 * had the event.
 *
 * @param atRisk in the group
 * @param events in the group
 * @param atRiskAgainst in the group that it is set against
 * @param eventsAgainst in the group that it is set against
 */
record PairedRisk(int atRisk, int events, int atRiskAgainst, int eventsAgainst) {

  int allAtRisk() {
    return atRisk + atRiskAgainst;
  }

  int allEvents() {
    return events + eventsAgainst;
  }

  /** All event times of two groups in order, by one walk through both. */
  static List<PairedRisk> of(PatientTimes group, PatientTimes against) {
    List<PatientTime> a = group.patients();
    List<PatientTime> b = against.patients();
    List<PairedRisk> all = new ArrayList<>();
    int i = 0;
    int j = 0;
    while (i < a.size() || j < b.size()) {
      double time =
          Math.min(
              i < a.size() ? a.get(i).time() : Double.POSITIVE_INFINITY,
              j < b.size() ? b.get(j).time() : Double.POSITIVE_INFINITY);
      int left = a.size() - i;
      int leftAgainst = b.size() - j;
      int events = 0;
      int eventsAgainst = 0;
      for (; i < a.size() && a.get(i).time() == time; i++) {
        events += a.get(i).event() ? 1 : 0;
      }
      for (; j < b.size() && b.get(j).time() == time; j++) {
        eventsAgainst += b.get(j).event() ? 1 : 0;
      }
      if (events + eventsAgainst > 0) {
        all.add(new PairedRisk(left, events, leftAgainst, eventsAgainst));
      }
    }
    return all;
  }
}
