package gapwise.synthesis.patients;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.multilevel.ClusteredRows;
import gapwise.synthesis.multilevel.ThreeLevelFit;
import gapwise.synthesis.multilevel.ThreeLevelModel;
import gapwise.synthesis.patients.PatientsFit.NotEstimable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;

/**
 * Measurements of patients and means of arms in one normal likelihood: y = intercept + u + within
 * (x - mean of the study) + across (mean of the study - centre) + e, with u of variance tau squared
 * shared by all of a study and e of one residual variance for all patients; the mean of an arm has
 * its own known sampling variance and, since the moderator is taken from the arm's mean, no part of
 * the slope within (Riley, Lambert, Staessen et al., Stat Med 2008;27:1870).
 *
 * <p>Patients' distances from the mean of their study tell the residual variance and the slope
 * within; means of studies and arms, with variances residual/n and as reported, tell the rest. The
 * likelihood is the product of the two, so that a search over the residual variance alone is left.
 */
public final class MeasuredModel {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  /** The residual variance is looked for within this factor of the one that patients alone give. */
  private static final double REACH = Math.log(1e4);

  private static final int LOOKS = 41;

  private final List<StudyEvidence<MeanArm>> studies;
  private final Slopes slopes;
  private final boolean restricted;

  /** Sums of squares and products of distances from the mean of the study, and their number. */
  private double xx;

  private double xy;
  private double yy;
  private int freedom;
  private double logSizes;

  private MeasuredModel(List<StudyEvidence<MeanArm>> studies, boolean restricted) {
    this.studies = studies;
    this.slopes = Slopes.of(studies, MeanArm::moderator);
    this.restricted = restricted;
    for (StudyEvidence<MeanArm> study : studies) {
      if (!study.patients().isEmpty()) {
        add(study);
      }
    }
  }

  private void add(StudyEvidence<MeanArm> study) {
    double meanX = study.mean(Patient::moderator);
    double meanY = study.mean(Patient::outcome);
    for (Patient patient : study.patients()) {
      double x = patient.moderator() - meanX;
      double y = patient.outcome() - meanY;
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
    freedom += study.patients().size() - 1;
    logSizes += Math.log(study.patients().size());
  }

  /**
   * Fits.
   *
   * @param studies at least one
   * @param centre where the intercept is told
   * @param restricted whether the likelihood is the restricted one
   */
  public static PatientsFit fit(
      List<StudyEvidence<MeanArm>> studies, double centre, boolean restricted) {
    return new MeasuredModel(studies, restricted).fit(centre);
  }

  private PatientsFit fit(double centre) {
    boolean patients = studies.stream().anyMatch(study -> !study.patients().isEmpty());
    int left = freedom - (slopes.within() ? 1 : 0);
    if (patients && left < 1) {
      return NotEstimable.because(
          "too-few-patients",
          "patients of one study are too few to tell how far patients differ beyond the moderator;"
              + " give such studies as summaries");
    }
    int means = 0;
    for (StudyEvidence<MeanArm> study : studies) {
      means += study.arms().size() + (study.patients().isEmpty() ? 0 : 1);
    }
    if (!patients) {
      return means > parameters()
          ? answer(ThreeLevelModel.fitShared(rows(1), restricted), OptionalDouble.empty(), centre)
          : tooFewMeans();
    }
    double alone = residualSquares() / left;
    if (!(residualSquares() > 1e-24 * yy)) {
      return NotEstimable.because(
          "zero-variance",
          "patients do not differ at all beyond the moderator, so nothing can be set against it");
    }
    if (means <= parameters()) {
      return fromPatientsAlone(alone, centre);
    }
    double residual = residualVariance(alone);
    return answer(
        ThreeLevelModel.fitShared(rows(residual), restricted), OptionalDouble.of(residual), centre);
  }

  private static PatientsFit tooFewMeans() {
    return NotEstimable.because(
        "too-few-studies", "one mean alone tells neither a spread between studies nor a slope");
  }

  /** One study: its own least squares, no spread between studies. */
  private PatientsFit fromPatientsAlone(double residual, double centre) {
    StudyEvidence<MeanArm> study = studies.get(0);
    double variance = restricted ? residual : residual * (freedom - within()) / (freedom + 1.0);
    double[] fitted = {study.mean(Patient::outcome), within() == 1 ? xy / xx : 0};
    double[][] covariance = {
      {variance / study.patients().size(), 0}, {0, within() == 1 ? variance / xx : 0}
    };
    double value =
        patientsPart(variance)
            - (restricted ? 0 : (LOG_TWO_PI + Math.log(variance / study.patients().size())) / 2);
    return new PatientsFit.Estimate(
        slopes.told(fitted, covariance, centre),
        0,
        OptionalDouble.of(variance),
        value,
        restricted,
        true,
        BinaryModel.warnings(slopes, 0, 1, true));
  }

  private int within() {
    return slopes.within() ? 1 : 0;
  }

  private int parameters() {
    return slopes.across() ? 2 : 1;
  }

  private double residualSquares() {
    return slopes.within() ? Math.max(0, yy - xy / xx * xy) : yy;
  }

  /** Log likelihood of the distances from the means of studies. */
  private double patientsPart(double residual) {
    int terms = freedom - (restricted ? within() : 0);
    double value =
        terms * (LOG_TWO_PI + Math.log(residual)) + logSizes + residualSquares() / residual;
    return -(restricted && slopes.within() ? value + Math.log(xx) : value) / 2;
  }

  private double whole(double logResidual) {
    double residual = Math.exp(logResidual);
    return patientsPart(residual)
        + ThreeLevelModel.fitShared(rows(residual), restricted).logLikelihood();
  }

  private double residualVariance(double alone) {
    double middle = Math.log(alone);
    int best = 0;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < LOOKS; i++) {
      double value = whole(look(middle, i));
      if (value > highest) {
        highest = value;
        best = i;
      }
    }
    UnivariatePointValuePair top =
        new BrentOptimizer(1e-10, 1e-12)
            .optimize(
                new MaxEval(1000),
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(this::whole),
                new SearchInterval(
                    look(middle, Math.max(0, best - 1)),
                    look(middle, Math.min(LOOKS - 1, best + 1)),
                    look(middle, best)));
    return Math.exp(top.getPoint());
  }

  private static double look(double middle, int i) {
    return middle + REACH * (2.0 * i / (LOOKS - 1) - 1);
  }

  /** Means of studies and arms, with their variances for a residual variance of patients. */
  private ClusteredRows rows(double residual) {
    List<Double> means = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    List<String> labels = new ArrayList<>();
    List<Double> moderators = new ArrayList<>();
    for (StudyEvidence<MeanArm> study : studies) {
      if (!study.patients().isEmpty()) {
        means.add(study.mean(Patient::outcome));
        variances.add(residual / study.patients().size());
        labels.add(study.label());
        moderators.add(study.mean(Patient::moderator) - slopes.middle());
      }
      for (MeanArm arm : study.arms()) {
        means.add(arm.mean());
        variances.add(arm.variance());
        labels.add(study.label());
        moderators.add(arm.moderator() - slopes.middle());
      }
    }
    double[] ones = new double[means.size()];
    Arrays.fill(ones, 1);
    List<double[]> design = new ArrayList<>(List.of(ones));
    if (slopes.across()) {
      design.add(moderators.stream().mapToDouble(Double::doubleValue).toArray());
    }
    return ClusteredRows.of(EffectSample.of(means, variances), labels, design);
  }

  private PatientsFit answer(ThreeLevelFit fit, OptionalDouble residual, double centre) {
    int p = slopes.size();
    double[] fitted = new double[p];
    double[][] covariance = new double[p][p];
    int[] places = slopes.across() ? new int[] {0, slopes.placeOfAcross()} : new int[] {0};
    for (int i = 0; i < places.length; i++) {
      fitted[places[i]] = fit.coefficient(i);
      for (int j = 0; j < places.length; j++) {
        covariance[places[i]][places[j]] = fit.covariance(i, j);
      }
    }
    if (slopes.within()) {
      fitted[slopes.placeOfWithin()] = xy / xx;
      covariance[slopes.placeOfWithin()][slopes.placeOfWithin()] = residual.orElseThrow() / xx;
    }
    double tauSquared = fit.betweenVariance().orElse(0);
    return new PatientsFit.Estimate(
        slopes.told(fitted, covariance, centre),
        tauSquared,
        residual,
        fit.logLikelihood() + (residual.isPresent() ? patientsPart(residual.getAsDouble()) : 0),
        restricted,
        fit.converged(),
        BinaryModel.warnings(slopes, tauSquared, studies.size(), fit.converged()));
  }
}
