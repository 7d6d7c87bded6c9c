package gapwise.synthesis.patients;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What one study gives: patients, summaries of other arms, or both.
 *
 * @param <A> a summary of an arm
 * @param arms of patients who are not among {@code patients}
 */
public record StudyEvidence<A>(String label, List<Patient> patients, List<A> arms) {
  public StudyEvidence {
    patients = List.copyOf(patients);
    arms = List.copyOf(arms);
    if (patients.isEmpty() && arms.isEmpty()) {
      throw new IllegalArgumentException("study " + label + " gives nothing");
    }
  }

  /** Mean of something over the patients, who must be some. */
  double mean(ToDoubleFunction<Patient> of) {
    // About the first, so that patients who are alike give their own value to the last digit.
    double first = of.applyAsDouble(patients.get(0));
    double sum = 0;
    for (Patient patient : patients) {
      sum += of.applyAsDouble(patient) - first;
    }
    return first + sum / patients.size();
  }

  /** Whether the moderator differs between patients by more than rounding. */
  boolean varies() {
    return !patients.isEmpty()
        && differ(patients.stream().mapToDouble(Patient::moderator).toArray());
  }

  /** Whether numbers differ by more than rounding, and by squares that can be told from 0. */
  static boolean differ(double[] values) {
    double low = Arrays.stream(values).min().orElse(0);
    double high = Arrays.stream(values).max().orElse(0);
    double size = Math.max(Math.abs(low), Math.abs(high));
    return high - low > Math.max(1e-100, 1e-12 * size);
  }
}
