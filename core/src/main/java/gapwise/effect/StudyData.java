package gapwise.effect;

import java.util.List;
import java.util.OptionalDouble;

/** The numbers one study reports for one measure. */
public interface StudyData {
  /** Groups of patients: 1 or 2; 0 where only an effect is reported. */
  int arms();

  /** Patients in all groups; empty where none are reported. */
  OptionalDouble participants();

  /** Events in all groups; empty where the measure counts none. */
  OptionalDouble allEvents();

  /** Means of its groups; none where it reports something else. */
  default List<ArmMean> means() {
    return List.of();
  }
}
