package gapwise.synthesis.patients;

import java.util.List;

/**
 * Degrees of freedom of coefficients, by the level at which they vary: Pinheiro and Bates,
 * Mixed-Effects Models in S and S-PLUS, 2000, section 2.4.2. What is told by studies (the middle
 * study, the slope across) rests on studies less such coefficients, the slope within on patients
 * less their studies less one; what is told by both rests on the fewer. Never below 1. For events
 * this is our carrying-over of a rule for measurements; it errs to the wide side, for the normal
 * distribution is its end.
 *
 * @param studies with patients or arms
 * @param studiesWithPatients that give patients one by one
 * @param patients known one by one
 */
public record Degrees(int studies, int studiesWithPatients, int patients) {

  /** Of one coefficient among those of its model. */
  public int of(Term term, List<Term> all) {
    int within = Math.max(1, patients - studiesWithPatients - 1);
    int ofStudies = 1 + (all.contains(Term.ACROSS) ? 1 : 0);
    // One study differs from no other, so its patients tell all there is.
    int between = studies == 1 ? within : Math.max(1, studies - ofStudies);
    return switch (term) {
      case WITHIN -> within;
      case DIFFERENCE -> Math.min(within, between);
      case INTERCEPT, ACROSS -> between;
    };
  }
}
