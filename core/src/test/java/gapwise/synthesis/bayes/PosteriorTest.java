package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.Interval;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PosteriorTest {
  /** Eight schools: Rubin, J Educ Stat 1981;6:377, table 1. */
  private static final EffectSample SCHOOLS =
      EffectSample.of(
          new double[] {28, 8, -3, 7, -1, 1, 18, 12},
          new double[] {225, 100, 256, 121, 81, 121, 100, 324});

  private static final Priors FLAT = new Priors(MeanPrior.FLAT, new TauPrior.Flat());

  private static Proper proper(EffectSample sample, Priors priors) {
    return assertInstanceOf(Proper.class, Posterior.of(sample, priors));
  }

  /** So many studies that found the same, with one variance. */
  private static EffectSample alike(int studies, double effect, double variance) {
    double[] effects = new double[studies];
    double[] variances = new double[studies];
    Arrays.fill(effects, effect);
    Arrays.fill(variances, variance);
    return EffectSample.of(effects, variances);
  }

  @Test
  void ofThreeLikeStudiesUnderFlatPriorsIsHalfCauchyInTau() {
    // The density is (v + tau^2)^-(k-1)/2: for k = 3 that of a half-Cauchy with scale root v, whose
    // quantile is root(v) tan(pi p/2).
    Marginal tau = proper(alike(3, 7, 4), FLAT).tau().orElseThrow();
    assertEquals(2, tau.median(), 1e-9);
    Interval ends = tau.equalTailed(0.9);
    assertEquals(2 * Math.tan(Math.PI * 0.025), ends.lower(), 1e-9);
    assertEquals(2 * Math.tan(Math.PI * 0.475), ends.upper(), 1e-7);
    assertTrue(tau.mean().isEmpty());
  }

  @Test
  void ofFourLikeStudiesUnderFlatPriorsHasAMeanOfTauInClosedForm() {
    // For k = 4 the density is v (v + tau^2)^-3/2, below x lies x/root(v + x^2): median root(v/3),
    // mean root v, no variance.
    Marginal tau = proper(alike(4, 7, 4), FLAT).tau().orElseThrow();
    assertEquals(Math.sqrt(4.0 / 3), tau.median(), 1e-9);
    assertEquals(2, tau.mean().orElseThrow(), 1e-8);
    assertTrue(tau.sd().isEmpty());
    assertEquals(3 / Math.sqrt(4 + 9), tau.below(3), 1e-10);
  }

  @Test
  void withNextToNoTauIsTheCommonEffectAndItsPrior() {
    // Normal with normal: precisions add, means are weighted by them (Gelman and others, Bayesian
    // Data Analysis, section 2.5). 1/4 + 1/1 + 1/4 = 1.5; (2/4 + 5/1 + 0/4)/1.5.
    Priors priors = new Priors(MeanPrior.normal(0, 2), new TauPrior.Uniform(0, 1e-9));
    Marginal mean =
        proper(EffectSample.of(new double[] {2, 5}, new double[] {4, 1}), priors).mean();
    assertEquals(5.5 / 1.5, mean.mean().orElseThrow(), 1e-12);
    assertEquals(Math.sqrt(1 / 1.5), mean.sd().orElseThrow(), 1e-12);
  }

  /** By {@code small_rooms.py} of the reference scripts, by SciPy's adaptive quadrature. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "0, 5.23851472, 6.57548335, 7.93237502, 5.17839478, 0.94444414",
    "5, 2.80011377, 3.31005732, 7.78687331, 4.36372512, 0.96320259"
  })
  void ofEightSchoolsIsThatOfAnotherQuadrature(
      double scale, double median, double tauMean, double mean, double sd, double above) {
    TauPrior prior = scale == 0 ? new TauPrior.Flat() : new TauPrior.HalfNormal(scale);
    Proper found = proper(SCHOOLS, new Priors(MeanPrior.FLAT, prior));
    Marginal tau = found.tau().orElseThrow();
    assertEquals(median, tau.median(), 1e-7);
    assertEquals(tauMean, tau.mean().orElseThrow(), 1e-7);
    assertEquals(mean, found.mean().mean().orElseThrow(), 1e-7);
    assertEquals(sd, found.mean().sd().orElseThrow(), 1e-7);
    assertEquals(above, found.mean().above(0), 1e-7);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1, 1e6})
  void goesWithTheUnit(double unit) {
    double[] effects = new double[8];
    double[] variances = new double[8];
    Arrays.setAll(effects, i -> unit * SCHOOLS.effect(i));
    Arrays.setAll(variances, i -> unit * unit * SCHOOLS.variance(i));
    Proper found = proper(EffectSample.of(effects, variances), FLAT);
    assertEquals(5.23851472 * unit, found.tau().orElseThrow().median(), 1e-7 * unit);
    assertEquals(7.93237502 * unit, found.mean().mean().orElseThrow(), 1e-7 * unit);
  }

  @Test
  void givesEachStudyAShareOfOne() {
    double sum = proper(SCHOOLS, FLAT).studies().stream().mapToDouble(TrueEffect::weight).sum();
    assertEquals(1, sum, 1e-12);
  }

  @Test
  void drawsEachStudyTowardsTheMean() {
    // Given tau, the mean lies between the common effect 7.6856 (tau 0; the published checks hold
    // it) and the plain mean 70/8 (tau without end), and a study between its own effect and that.
    Proper found = proper(SCHOOLS, FLAT);
    for (int i = 0; i < SCHOOLS.size(); i++) {
      double drawn = found.studies().get(i).mean();
      assertTrue(
          drawn > Math.min(SCHOOLS.effect(i), 7.6856)
              && drawn < Math.max(SCHOOLS.effect(i), 70.0 / 8),
          "school " + i + ": " + drawn);
    }
  }

  @Test
  void isLessSureOfAFurtherStudyThanOfTheMean() {
    Proper found = proper(SCHOOLS, FLAT);
    double ofMean = found.mean().sd().orElseThrow();
    double tau = found.tau().orElseThrow().mean().orElseThrow();
    double tauSd = found.tau().orElseThrow().sd().orElseThrow();
    // Variances add: that of the mean, and the mean of tau squared.
    assertEquals(
        Math.sqrt(ofMean * ofMean + tau * tau + tauSd * tauSd),
        found.predictive().orElseThrow().sd().orElseThrow(),
        1e-8);
  }

  @Test
  void ofOneStudySaysNothingOfTau() {
    Priors priors = new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(1));
    Proper found = proper(alike(1, 3, 2), priors);
    assertTrue(found.tau().isEmpty());
    assertEquals("posterior-is-prior", found.warnings().get(0).code());
  }

  @Test
  void ofTwoStudiesUnderFlatPriorsIsNone() {
    assertEquals(
        "improper-posterior",
        assertInstanceOf(Posterior.None.class, Posterior.of(alike(2, 0, 1), FLAT)).why().code());
  }

  @Test
  void ofAStudyWithoutVarianceIsNone() {
    assertEquals(
        "zero-variance",
        assertInstanceOf(Posterior.None.class, Posterior.of(alike(5, 0, 0), FLAT)).why().code());
  }
}
