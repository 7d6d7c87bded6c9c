package gapwise.synthesis.patients;

import gapwise.problem.Problem;
import java.util.List;
import java.util.OptionalDouble;

/** A fitted model, or why there is none. */
public sealed interface PatientsFit {
  /**
   * A coefficient.
   *
   * @param standardError above 0
   */
  record Coefficient(Term term, double estimate, double standardError) {
    public Coefficient {
      if (!Double.isFinite(estimate) || !(standardError > 0 && Double.isFinite(standardError))) {
        throw new IllegalArgumentException(
            "no coefficient " + term + ": " + estimate + " +- " + standardError);
      }
    }
  }

  /**
   * A fit.
   *
   * @param coefficients those that can be told
   * @param tauSquared variance of studies about the line across them, at least 0
   * @param residualVariance of patients about the line of their study; for measurements of patients
   * @param logLikelihood with all constants (restricted: but log det(X'X)/2)
   * @param converged whether the search settled
   * @param warnings what a reader must know
   */
  record Estimate(
      List<Coefficient> coefficients,
      double tauSquared,
      OptionalDouble residualVariance,
      double logLikelihood,
      boolean restricted,
      boolean converged,
      List<Problem> warnings)
      implements PatientsFit {
    public Estimate {
      coefficients = List.copyOf(coefficients);
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * There is none.
   *
   * @param problem code and reason
   */
  record NotEstimable(Problem problem) implements PatientsFit {
    static NotEstimable because(String code, String reason) {
      return new NotEstimable(new Problem("", code, reason));
    }
  }
}
