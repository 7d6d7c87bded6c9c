package gapwise.synthesis.patients;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.synthesis.patients.PatientsFit.Coefficient;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Which slopes some studies can tell, and how their coefficients go from the scale on which they
 * are fitted to the one on which they are told.
 *
 * @param within whether the moderator differs between patients of a study
 * @param across whether at least three studies, not all alike, lie along the moderator
 * @param middle mean of the studies' mean moderators, taken off for the fit
 * @param warnings why a slope cannot be told
 */
record Slopes(boolean within, boolean across, double middle, List<Problem> warnings) {
  /** A line through two studies leaves nothing to see how far studies lie off it. */
  private static final int FEWEST_STUDIES = 3;

  static <A> Slopes of(List<StudyEvidence<A>> studies, ToDoubleFunction<A> moderator) {
    List<Problem> warnings = new ArrayList<>();
    boolean patients = studies.stream().anyMatch(study -> !study.patients().isEmpty());
    boolean within = studies.stream().anyMatch(StudyEvidence::varies);
    if (!within) {
      warnings.add(
          new Problem(
              "",
              patients ? "no-variation" : "no-patients",
              say(
                  patients
                      ? "analysis.no-slope-as-patients-alike"
                      : "analysis.no-slope-without-patients")));
    }
    List<Double> means = new ArrayList<>();
    for (StudyEvidence<A> study : studies) {
      if (!study.patients().isEmpty()) {
        means.add(study.mean(Patient::moderator));
      }
      study.arms().forEach(arm -> means.add(moderator.applyAsDouble(arm)));
    }
    boolean across =
        studies.size() >= FEWEST_STUDIES
            && StudyEvidence.differ(means.stream().mapToDouble(Double::doubleValue).toArray());
    if (!across) {
      warnings.add(new Problem("", "too-few-studies", say("analysis.no-slope-across")));
    }
    double middle = means.stream().mapToDouble(mean -> mean / means.size()).sum();
    return new Slopes(within, across, middle, warnings);
  }

  /** Number of coefficients fitted. */
  int size() {
    return 1 + (within ? 1 : 0) + (across ? 1 : 0);
  }

  /** Place of the slope within studies among the coefficients, if it is there. */
  int placeOfWithin() {
    return 1;
  }

  /** Place of the slope across studies, if it is there. */
  int placeOfAcross() {
    return within ? 2 : 1;
  }

  /**
   * The coefficients as they are told.
   *
   * @param fitted intercept at {@code middle}, slope within, slope across, as far as there are such
   * @param covariance of these
   * @param centre where the intercept is told
   */
  List<Coefficient> told(double[] fitted, double[][] covariance, double centre) {
    List<Coefficient> told = new ArrayList<>();
    double[] intercept = new double[size()];
    intercept[0] = 1;
    if (across) {
      intercept[placeOfAcross()] = centre - middle;
    }
    told.add(combined(Term.INTERCEPT, intercept, fitted, covariance));
    double[] difference = new double[size()];
    if (within) {
      told.add(combined(Term.WITHIN, unit(placeOfWithin()), fitted, covariance));
      difference[placeOfWithin()] = -1;
    }
    if (across) {
      told.add(combined(Term.ACROSS, unit(placeOfAcross()), fitted, covariance));
      difference[placeOfAcross()] = 1;
    }
    if (within && across) {
      told.add(combined(Term.DIFFERENCE, difference, fitted, covariance));
    }
    return told;
  }

  private double[] unit(int place) {
    double[] unit = new double[size()];
    unit[place] = 1;
    return unit;
  }

  private static Coefficient combined(
      Term term, double[] weights, double[] fitted, double[][] covariance) {
    double estimate = 0;
    double variance = 0;
    for (int i = 0; i < weights.length; i++) {
      estimate += weights[i] * fitted[i];
      for (int j = 0; j < weights.length; j++) {
        variance += weights[i] * weights[j] * covariance[i][j];
      }
    }
    return new Coefficient(term, estimate, Math.sqrt(variance));
  }
}
