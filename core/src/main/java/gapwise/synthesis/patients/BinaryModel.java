package gapwise.synthesis.patients;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.synthesis.patients.PatientsFit.NotEstimable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * Events of patients and of arms in one logistic likelihood with a normal spread between studies:
 * logit p = intercept + u + within (x - mean of the study) + across (mean of the study - centre).
 * Patients give both slopes, arms known by their summaries the slope across only (Riley, Lambert,
 * Staessen et al., Stat Med 2008;27:1870; Riley and Steyerberg, Res Synth Methods 2010;1:2). Where
 * an arm reports the standard deviation of the moderator, its chance of an event is the mean over a
 * normal moderator with the slope within; else all its patients are taken to be at its mean. By
 * maximum likelihood, standard errors from the full information.
 */
public final class BinaryModel {
  /** Standard errors above this, per standard deviation of the moderator, are no estimates. */
  private static final double NO_INFORMATION = 100;

  /** Logits of studies do not spread so far; the likelihood rises without end. */
  private static final double NO_SPREAD = 50;

  private BinaryModel() {}

  /**
   * Fits.
   *
   * @param studies at least one; patients' outcomes are 0 or 1
   * @param centre where the intercept is told
   * @param points of the quadrature
   */
  public static PatientsFit fit(List<StudyEvidence<CountArm>> studies, double centre, int points) {
    Slopes slopes = Slopes.of(studies, CountArm::moderator);
    EventRows rows = EventRows.of(studies, slopes);
    double events = Arrays.stream(rows.events).sum();
    double total = Arrays.stream(rows.totals).sum();
    if (events == 0) {
      return NotEstimable.because("no-events", "no patient had the event; nothing can be fitted");
    }
    if (events == total) {
      return NotEstimable.because(
          "all-events", "every patient had the event; nothing can be fitted");
    }
    EventSurface surface = new EventSurface(rows, slopes, points);
    double[] start = new double[slopes.size()];
    start[0] = Math.log((events + 0.5) / (total - events + 0.5));
    Ascent top = Ascent.from(surface, true, start);
    double tau = 0;
    if (studies.size() > 1) {
      for (double spread : new double[] {0.3, 1, 3}) {
        double[] from = Arrays.copyOf(top.place, slopes.size() + 1);
        from[slopes.size()] = spread;
        Ascent other = Ascent.from(surface, false, from);
        if (other.height.value() > top.height.value() + 1e-9) {
          top = other;
          tau = other.place[slopes.size()];
        }
      }
    }
    return answer(top, tau, slopes, rows, studies.size(), centre);
  }

  private static PatientsFit answer(
      Ascent top, double tau, Slopes slopes, EventRows rows, int studies, double centre) {
    int q = top.place.length;
    double[][] information = new double[q][q];
    for (int i = 0; i < q; i++) {
      for (int j = 0; j < q; j++) {
        information[i][j] = -top.height.bends()[i][j];
      }
    }
    LUDecomposition lu = new LUDecomposition(new Array2DRowRealMatrix(information), 1e-300);
    if (!lu.getSolver().isNonSingular() || tau > NO_SPREAD) {
      return noTop(tau);
    }
    double[][] inverse = lu.getSolver().getInverse().getData();
    double[] unit = new double[slopes.size()];
    for (int i = 0; i < unit.length; i++) {
      boolean proper = inverse[i][i] > 0 && inverse[i][i] < NO_INFORMATION * NO_INFORMATION;
      if (!proper || !Double.isFinite(top.place[i])) {
        return noTop(tau);
      }
      unit[i] = 1;
    }
    if (slopes.within()) {
      unit[slopes.placeOfWithin()] = 1 / rows.withinUnit;
    }
    if (slopes.across()) {
      unit[slopes.placeOfAcross()] = 1 / rows.acrossUnit;
    }
    double[] fitted = new double[unit.length];
    double[][] covariance = new double[unit.length][unit.length];
    for (int i = 0; i < unit.length; i++) {
      fitted[i] = top.place[i] * unit[i];
      for (int j = 0; j < unit.length; j++) {
        covariance[i][j] = inverse[i][j] * unit[i] * unit[j];
      }
    }
    return new PatientsFit.Estimate(
        slopes.told(fitted, covariance, centre),
        tau * tau,
        OptionalDouble.empty(),
        top.height.value(),
        false,
        top.settled,
        warnings(slopes, tau, studies, top.settled));
  }

  private static PatientsFit noTop(double tau) {
    return tau > NO_SPREAD
        ? NotEstimable.because(
            "spread-without-limit",
            "in each study all patients or none had the event, so the spread between studies has no"
                + " estimate and nothing is told")
        : NotEstimable.because(
            "separation",
            "the moderator parts patients with the event from those without nearly without exception,"
                + " so the likelihood has no top and no slope is told");
  }

  static List<Problem> warnings(Slopes slopes, double tau, int studies, boolean settled) {
    List<Problem> warnings = new ArrayList<>(slopes.warnings());
    if (studies == 1) {
      warnings.add(new Problem("", "single-study", say("analysis.one-study-of-patients")));
    } else if (tau == 0) {
      warnings.add(
          new Problem(
              "", "between-study-variance-at-zero", say("analysis.variance-of-patients-at-zero")));
    }
    if (!settled) {
      warnings.add(new Problem("", "did-not-converge", say("analysis.patients-did-not-settle")));
    }
    return warnings;
  }
}
