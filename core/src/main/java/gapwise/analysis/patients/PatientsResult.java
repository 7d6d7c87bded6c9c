package gapwise.analysis.patients;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Patients and summaries of arms in one likelihood. Part of a {@link Result}.
 *
 * @param coefficients {@code intercept}, {@code within}, {@code across}, {@code difference}, as far
 *     as they can be told
 * @param tauSquared variance of studies about the line across them; left out without coefficients
 * @param residualVariance of patients about the line of their study, for measurements
 * @param studiesWithPatients studies that give patients one by one
 * @param studiesWithSummariesOnly studies that do not
 * @param patients who are known one by one
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record PatientsResult(
    List<Coefficient> coefficients,
    OptionalDouble tauSquared,
    OptionalDouble residualVariance,
    int studiesWithPatients,
    int studiesWithSummariesOnly,
    int patients) {
  public PatientsResult {
    coefficients = List.copyOf(coefficients);
  }

  /**
   * A coefficient on the analysis scale, a slope per unit of the moderator; limits and test by
   * Student's t on its degrees of freedom.
   */
  public record Coefficient(
      String term,
      double estimate,
      double standardError,
      double lower,
      double upper,
      double statistic,
      int degreesOfFreedom,
      double pValue) {}
}
