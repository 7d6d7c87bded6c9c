package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.ArmCounts;
import gapwise.effect.StudyData;
import gapwise.numeric.GaussHermite;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When a regression of counts has a top, and the parts that look for it. */
class CountRegressionFitTest {
  private static DesignMatrix line(double... x) {
    List<double[]> rows = new ArrayList<>();
    for (double one : x) {
      rows.add(new double[] {1, one});
    }
    return DesignMatrix.of(List.of(DesignMatrix.INTERCEPT, "x"), rows);
  }

  private static List<StudyData> arms(int... eventsAndTotals) {
    List<StudyData> arms = new ArrayList<>();
    for (int i = 0; i < eventsAndTotals.length; i += 2) {
      arms.add(new ArmCounts(eventsAndTotals[i], eventsAndTotals[i + 1]));
    }
    return arms;
  }

  private static CountRegression fit(List<StudyData> arms, DesignMatrix design) {
    return CountRegression.of(
        ExactLikelihood.Model.PROPORTION, arms, design, 25, LikelihoodLimits.normal(0.95));
  }

  private static String code(CountRegression none) {
    return assertInstanceOf(CountRegression.NotFitted.class, none).why().code();
  }

  /** Albert and Anderson's cases: apart, apart but for ties, and overlapping (Biometrika 1984). */
  @ParameterizedTest
  @CsvSource({
    "'0,5,0,9,4,4,8,8', '1,2,3,4', estimate-at-limit",
    "'0,5,0,9,6,6,8,8', '1,3,3,4', estimate-at-limit",
    "'0,5,3,9,6,6,8,8', '1,3,3,4', estimate-at-limit",
    "'0,5,0,9,0,4,0,8', '1,2,3,4', no-events",
    "'5,5,9,9,4,4,8,8', '1,2,3,4', all-events",
  })
  void studiesAtLimitsThatTheModeratorSetsApartHaveNoTop(String counts, String x, String code) {
    int[] numbers = ints(counts);
    int[] places = ints(x);
    double[] at = new double[places.length];
    for (int i = 0; i < at.length; i++) {
      at[i] = places[i];
    }
    assertEquals(code, code(fit(arms(numbers), line(at))));
  }

  private static int[] ints(String commas) {
    return java.util.Arrays.stream(commas.split(",")).mapToInt(Integer::parseInt).toArray();
  }

  @Test
  void studiesAtLimitsThatOverlapHaveATopWhereOneLiesInside() {
    CountRegression fit = fit(arms(0, 5, 8, 8, 0, 9, 3, 6), line(1, 2, 3, 4));

    CountRegressionFit top = assertInstanceOf(CountRegressionFit.class, fit);
    assertTrue(top.converged());
    assertTrue(top.tau() > 0);
  }

  /** Without spread and with one patient a study the model is an ordinary logistic regression. */
  @Test
  void singlePatientsHaveTheirLogisticRegression() {
    CountRegressionFit fit =
        assertInstanceOf(
            CountRegressionFit.class,
            fit(arms(0, 1, 1, 1, 0, 1, 1, 1, 1, 1, 0, 1), line(0, 1, 2, 3, 4, 5)));

    assertEquals(0, fit.tau());
    double a = fit.coefficients().get(0).value().estimate();
    double b = fit.coefficients().get(1).value().estimate();
    // Its score equations: events and their places are as many as expected.
    double events = 0;
    double places = 0;
    for (int i = 0; i < 6; i++) {
      events += 1 / (1 + Math.exp(-(a + b * i)));
      places += i / (1 + Math.exp(-(a + b * i)));
    }
    assertEquals(3, events, 1e-7);
    assertEquals(1 + 3 + 4, places, 1e-7);
    assertTrue(fit.warnings().stream().anyMatch(one -> one.code().equals("profile-without-limit")));
  }

  /** What the likelihood tends to is one half for each study where nothing tells them apart. */
  @Test
  void farAwayEveryStudyAtALimitIsATossOfACoin() {
    BinomialLikelihoods studies =
        new BinomialLikelihoods(
            new double[] {0, 4, 0, 7}, new double[] {5, 4, 6, 7}, new double[4]);
    LinearMeans means = LinearMeans.Turned.of(DesignMatrix.ofOneMean(4)).means();

    assertEquals(4 * Math.log(0.5), FarLikelihood.of(studies, means), 1e-10);
  }

  /** The other rule, of 200 points, whose derivatives are exact for its own sums. */
  @ParameterizedTest
  @CsvSource({"0.4, 0.3", "-1.2, 0.9", "2.5, 1.8"})
  void theLatticeAndGaussHermitesPointsMakeTheSameIntegrals(double mean, double tau) {
    for (StudyLikelihoods studies :
        List.of(
            new BinomialLikelihoods(
                new double[] {3, 0, 11}, new double[] {9, 7, 11}, new double[3]),
            new PoissonLikelihoods(new double[] {3, 0, 11}, new double[] {9, 7, 1}),
            new HypergeometricLikelihoods(
                new double[] {3, 0, 6},
                new double[] {20, 15, 9},
                new double[] {25, 12, 11},
                new double[] {11, 4, 8}))) {
      StudyIntegral points = new StudyIntegral(studies, GaussHermite.of(200));
      LatticeIntegral lattice = new LatticeIntegral(studies);
      for (int study = 0; study < 3; study++) {
        points.at(study, mean, tau, 0, 0);
        lattice.at(study, mean, tau, 0, 0);
        assertEquals(points.value, lattice.value, 1e-9);
        for (int a = 0; a < 2; a++) {
          assertEquals(points.gradient[a], lattice.gradient[a], 1e-7);
          for (int b = 0; b < 2; b++) {
            assertEquals(points.hessian[a][b], lattice.hessian[a][b], 1e-5);
          }
        }
      }
    }
  }

  /** Far along a moderator a full fit at each value is what the profile goes through. */
  @Test
  void atItsLimitAProfileHasFallenByHalfTheSquareOfItsRoot() {
    List<StudyData> arms = arms(2, 10, 5, 12, 0, 9, 9, 11, 6, 8, 14, 14);
    DesignMatrix design = line(1, 2, 3, 4, 5, 6);
    CountRegressionFit fit = (CountRegressionFit) fit(arms, design);
    double upper = fit.coefficients().get(1).value().interval().upper();
    StudyLikelihoods studies = StudyLikelihoods.of(ExactLikelihood.Model.PROPORTION, arms);
    double best = Double.NEGATIVE_INFINITY;
    for (double tau = 0.02; tau < 8; tau += 0.04) {
      List<StudyConvolution> at = new ArrayList<>();
      for (int i = 0; i < arms.size(); i++) {
        at.add(new StudyConvolution(studies, i, tau));
      }
      for (double mean = -20; mean < 1; mean += 0.05) {
        double sum = 0;
        for (int i = 0; i < at.size(); i++) {
          sum += at.get(i).log(mean + upper * (i + 1));
        }
        best = Math.max(best, sum);
      }
    }
    // 3.841459/2; the grid lies below the top of the profile, by little
    assertEquals(1.920729, fit.logLikelihood() - best, 2e-3);
  }
}
