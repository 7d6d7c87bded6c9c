package gapwise.synthesis.patients;

/**
 * One patient.
 *
 * @param outcome 1 or 0 for an event, or the measurement on its analysis scale; finite
 * @param moderator such as the defect's length; finite
 */
public record Patient(double outcome, double moderator) {
  public Patient {
    if (!Double.isFinite(outcome) || !Double.isFinite(moderator)) {
      throw new IllegalArgumentException("no patient: " + outcome + " at " + moderator);
    }
  }
}
