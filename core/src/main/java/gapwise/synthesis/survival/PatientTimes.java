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
}
