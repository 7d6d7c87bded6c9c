package gapwise.synthesis.survival;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The times of all patients of one group, earliest first. At one time events stand before patients
 * last seen then, who were still at risk when the events came. Immutable.
 */
public final class PatientTimes {
  private static final Comparator<PatientTime> ORDER =
      Comparator.comparingDouble(PatientTime::time).thenComparing(patient -> !patient.event());

  private final List<PatientTime> patients;
  private final int events;

  private PatientTimes(List<PatientTime> patients, int events) {
    this.patients = patients;
    this.events = events;
  }

  /**
   * Puts times in order.
   *
   * @param patients at least one, in any order
   */
  public static PatientTimes of(List<PatientTime> patients) {
    if (patients.isEmpty()) {
      throw new IllegalArgumentException("a group needs at least one patient");
    }
    List<PatientTime> sorted = new ArrayList<>(patients);
    sorted.sort(ORDER);
    int events = (int) sorted.stream().filter(PatientTime::event).count();
    return new PatientTimes(List.copyOf(sorted), events);
  }

  /** All patients, earliest first. */
  public List<PatientTime> patients() {
    return patients;
  }

  /** Number of patients. */
  public int size() {
    return patients.size();
  }

  /** Number of events. */
  public int events() {
    return events;
  }

  /** The longest time that a patient was followed. */
  public double longest() {
    return patients.get(patients.size() - 1).time();
  }

  /** Patients followed longer than a time. */
  int followedBeyond(double time) {
    return size() - firstBeyond(time);
  }

  /** Patients last seen without the event after one time and before another. */
  int censoredBetween(double after, double before) {
    int count = 0;
    int from = after == 0 ? 0 : firstBeyond(after);
    for (int i = from; i < size() && patients.get(i).time() < before; i++) {
      count += patients.get(i).event() ? 0 : 1;
    }
    return count;
  }

  /** The place of the first patient followed longer than a time. */
  private int firstBeyond(double time) {
    int low = 0;
    int high = size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (patients.get(middle).time() <= time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
