package gapwise.synthesis.survival;

/**
 * How long one patient was followed.
 *
 * @param time from the start of the clock, at least 0, finite; any one unit for all patients
 * @param event whether the event came then; otherwise the patient was last seen without it
 */
public record PatientTime(double time, boolean event) {
  public PatientTime {
    if (!(time >= 0 && Double.isFinite(time))) {
      throw new IllegalArgumentException("time must be at least 0 and finite, was " + time);
    }
  }
}
