package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.ArmCounts;
import gapwise.effect.EmptyCells;
import gapwise.effect.Interval;
import gapwise.effect.RiskRatio;
import gapwise.effect.StudyEffect;
import gapwise.effect.TwoByTwo;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Two manuscripts' worked examples with few studies. Kaplankiran, Li, Trotta, Twumasi and
 * Georgiades, Employment in first-episode psychosis: a systematic review and Bayesian
 * meta-analysis, 2026: counts, priors and posterior numbers as their public repository
 * employment-early-psychosis has them (looked up; a release candidate, not yet in print).
 * Carmona-Bayonas, Filtering noise without sacrificing power, 2026 (submitted): numbers as its
 * public account prints them (looked up). The second witness, to five decimals, is NumPy over dense
 * grids: few_trials_posteriors.py beside the tests.
 */
class FewTrialsPosteriorTest {
  /** A grid of spreads tells their quantiles to about this. */
  private static final double CLOSE = 1e-5;

  /** Employed and all, with individual placement and without: the trials of table trials.csv. */
  private static final int[] ERICKSON = {34, 47, 25, 50};

  private static final int[] KILLACKEY_2008 = {13, 20, 2, 21};
  private static final int[] KILLACKEY_2019 = {47, 66, 29, 60};
  private static final int[] NUECHTERLEIN = {25, 36, 5, 15};

  private static Proper employed(String trials, double scale) {
    int[][] some =
        switch (trials) {
          case "without Killackey 2019" -> new int[][] {ERICKSON, KILLACKEY_2008};
          case "without Erickson" -> new int[][] {KILLACKEY_2008, KILLACKEY_2019};
          case "four" -> new int[][] {ERICKSON, KILLACKEY_2008, KILLACKEY_2019, NUECHTERLEIN};
          default -> new int[][] {ERICKSON, KILLACKEY_2008, KILLACKEY_2019};
        };
    List<StudyEffect> effects = Arrays.stream(some).map(FewTrialsPosteriorTest::effect).toList();
    return assertInstanceOf(
        Proper.class,
        Posterior.of(
            EffectSample.of(
                effects.stream().mapToDouble(one -> one.estimate().orElseThrow()).toArray(),
                effects.stream().mapToDouble(one -> one.variance().orElseThrow()).toArray()),
            new Priors(MeanPrior.normal(0, 1), new TauPrior.HalfNormal(scale))));
  }

  private static StudyEffect effect(int[] trial) {
    return new RiskRatio(EmptyCells.USUAL, false)
        .effect(new TwoByTwo(new ArmCounts(trial[0], trial[1]), new ArmCounts(trial[2], trial[3])));
  }

  /**
   * Drawn by Hamiltonian Monte Carlo: the smaller effective size of the authors' diagnostics, then
   * lower limit, median and upper limit of the risk ratio, the same of tau, the limits of a further
   * trial, and the share above 1. A quantile must lie where, within three errors of so many draws,
   * the share below is right.
   */
  @ParameterizedTest
  @CsvSource({
    "without Killackey 2019, 0.5, 3705, 0.8251932, 1.7690161, 4.3727135, 0.0280755, 0.426679,"
        + " 1.1544553, 0.4607736, 8.2435575, 0.9460625",
    "without Erickson, 0.5, 3639, 0.8273725, 1.7729007, 4.3301503, 0.0243045, 0.414104, 1.1431895,"
        + " 0.4393553, 8.1189064, 0.94575",
    "three, 0.25, 4628, 1.1200183, 1.5511817, 2.3805457, 0.0061084, 0.1367395, 0.5173719,"
        + " 0.9007637, 3.0683480, 0.9935",
    "three, 0.5, 3031, 0.9849900, 1.5924759, 3.1174060, 0.0097373, 0.254057, 0.9791339, 0.5999577,"
        + " 5.1980195, 0.9730625",
    "three, 1, 2756, 0.7422548, 1.6125883, 3.7222051, 0.0167530, 0.424353, 1.6410832, 0.2977887,"
        + " 9.6130455, 0.931",
    "four, 0.5, 3471, 1.1419156, 1.6360986, 2.8004391, 0.0086043, 0.2117225, 0.8316753, 0.7574181,"
        + " 4.2821652, 0.991"
  })
  void riskRatiosOfEmploymentAreThoseOfTheManuscript(
      String trials,
      double scale,
      int draws,
      double lower,
      double median,
      double upper,
      double tauLower,
      double tauMedian,
      double tauUpper,
      double furtherLower,
      double furtherUpper,
      double above) {
    Proper found = employed(trials, scale);
    Marginal tau = found.tau().orElseThrow();
    Marginal further = found.predictive().orElseThrow();
    holds(found.mean().below(Math.log(lower)), 0.025, draws);
    holds(found.mean().below(Math.log(median)), 0.5, draws);
    holds(found.mean().below(Math.log(upper)), 0.975, draws);
    holds(tau.below(tauLower), 0.025, draws);
    holds(tau.below(tauMedian), 0.5, draws);
    holds(tau.below(tauUpper), 0.975, draws);
    holds(further.below(Math.log(furtherLower)), 0.025, draws);
    holds(further.below(Math.log(furtherUpper)), 0.975, draws);
    holds(found.mean().above(0), above, draws);
  }

  private static void holds(double share, double printed, int draws) {
    double error = Math.sqrt(printed * (1 - printed) / draws);
    assertTrue(
        Math.abs(share - printed) < 3 * error,
        () -> share + " lies " + (share - printed) / error + " errors from " + printed);
  }

  /** The same by the grid: limits and median of the log risk ratio, of tau, of a further trial. */
  @ParameterizedTest
  @CsvSource({
    "without Killackey 2019, 0.5, -0.1902096, 0.5659745, 1.4842010, 0.0234838, 0.4220202, 1.1444673,"
        + " -0.8030164, 2.1015845",
    "without Erickson, 0.5, -0.1766371, 0.5709915, 1.4863520, 0.0231134, 0.4181390, 1.1408288,"
        + " -0.7872993, 2.1009011",
    "three, 0.25, 0.1195542, 0.4418446, 0.8681607, 0.0062086, 0.1398318, 0.5203341, -0.1030701,"
        + " 1.1171073",
    "three, 0.5, -0.0055336, 0.4635253, 1.1135443, 0.0104564, 0.2548005, 0.9670893, -0.5046370,"
        + " 1.6276521",
    "three, 1, -0.2488392, 0.4769152, 1.3171113, 0.0157390, 0.4175187, 1.6474386, -1.1698912,"
        + " 2.2287760",
    "four, 0.5, 0.1235279, 0.4917043, 1.0278450, 0.0091533, 0.2139856, 0.8451615, -0.3035361,"
        + " 1.4806725"
  })
  void riskRatiosOfEmploymentAreThoseOfTheGrid(
      String trials,
      double scale,
      double lower,
      double median,
      double upper,
      double tauLower,
      double tauMedian,
      double tauUpper,
      double furtherLower,
      double furtherUpper) {
    Proper found = employed(trials, scale);
    close(found.mean(), lower, median, upper, CLOSE);
    // The grid has 120,000 cells of tau up to seven scales.
    close(found.tau().orElseThrow(), tauLower, tauMedian, tauUpper, 7 * scale / 120_000);
    Interval further = found.predictive().orElseThrow().equalTailed(0.95);
    assertEquals(furtherLower, further.lower(), CLOSE);
    assertEquals(furtherUpper, further.upper(), CLOSE);
  }

  private static void close(
      Marginal marginal, double lower, double median, double upper, double error) {
    Interval limits = marginal.equalTailed(0.95);
    assertEquals(lower, limits.lower(), error);
    assertEquals(median, marginal.median(), error);
    assertEquals(upper, limits.upper(), error);
  }

  /**
   * Two groups of one trial of aspirin with hazard ratios of 0.61 (0.34 to 1.08, looked up) and
   * 0.51 (0.29 to 0.88, from memory of Martling and others, N Engl J Med 2025;393:1051), tau
   * half-normal with 0.5, mean flat. Printed of the first group: 0.58 (0.36 to 0.94), below 1 with
   * 98.7 %, alone 95.3 %, and a tau "around 0.24": mean and standard deviation of its effect
   * carried back, as a normal distribution.
   */
  @Test
  void anEffectThatBorrowsFromAnotherIsAsPrinted() {
    double normal = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.975);
    double[][] limits = {{0.61, 0.34, 1.08}, {0.51, 0.29, 0.88}};
    double[] effects = Arrays.stream(limits).mapToDouble(one -> Math.log(one[0])).toArray();
    double[] errors =
        Arrays.stream(limits).mapToDouble(one -> Math.log(one[2] / one[1]) / 2 / normal).toArray();
    Proper found =
        assertInstanceOf(
            Proper.class,
            Posterior.of(
                EffectSample.of(effects, Arrays.stream(errors).map(one -> one * one).toArray()),
                new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(0.5))));
    TrueEffect first = found.studies().get(0);
    assertEquals(0.58, Math.exp(first.mean()), 0.005);
    assertEquals(0.36, Math.exp(first.mean() - normal * first.sd()), 0.005);
    assertEquals(0.94, Math.exp(first.mean() + normal * first.sd()), 0.005);
    assertEquals(0.987, below(first.mean() / first.sd()), 0.0005);
    assertEquals(0.953, below(effects[0] / errors[0]), 0.0005);
    assertEquals(0.24, found.tau().orElseThrow().median(), 0.005);
    // And closer, by the grid.
    assertEquals(-0.5486795, first.mean(), CLOSE);
    assertEquals(0.2476025, first.sd(), CLOSE);
    assertEquals(0.238239, found.tau().orElseThrow().median(), 2 * CLOSE);
  }

  private static double below(double ratio) {
    return NormalDistribution.of(0, 1).cumulativeProbability(-ratio);
  }

  /**
   * The first manuscript again: shares employed at a fixed time in ten cohorts by their binomial
   * likelihood, the middle logit normal about 0 with 1.5: effective size, limits and median of the
   * share, of tau, and limits of a further cohort.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 3144, 0.2586910, 0.3441909, 0.4476878, 0.3460916, 0.5731275, 1.0507615, 0.1215451, 0.6634979",
    "0.5, 3579, 0.2636175, 0.3435733, 0.4369627, 0.3324228, 0.537487, 0.9011822, 0.1385419, 0.6412011"
  })
  void sharesByTheirOwnLikelihoodAreThoseOfTheManuscript(
      double scale,
      int draws,
      double lower,
      double median,
      double upper,
      double tauLower,
      double tauMedian,
      double tauUpper,
      double furtherLower,
      double furtherUpper) {
    CountsPosterior found = shares(scale);
    holds(found.centre().below(logit(lower)), 0.025, draws);
    holds(found.centre().below(logit(median)), 0.5, draws);
    holds(found.centre().below(logit(upper)), 0.975, draws);
    holds(found.tau().below(tauLower), 0.025, draws);
    holds(found.tau().below(tauMedian), 0.5, draws);
    holds(found.tau().below(tauUpper), 0.975, draws);
    holds(found.predictive().below(logit(furtherLower)), 0.025, draws);
    holds(found.predictive().below(logit(furtherUpper)), 0.975, draws);
  }

  /** The same by a grid of 401 logits and 1,200 spreads, between which it is drawn straight. */
  @ParameterizedTest
  @CsvSource({
    "1, -1.057970, -0.646640, -0.216610, 0.348045, 0.577283, 1.040960",
    "0.5, -1.028841, -0.649198, -0.255462, 0.334089, 0.536993, 0.893293"
  })
  void sharesByTheirOwnLikelihoodAreThoseOfTheGrid(
      double scale,
      double lower,
      double median,
      double upper,
      double tauLower,
      double tauMedian,
      double tauUpper) {
    CountsPosterior found = shares(scale);
    close(found.centre(), lower, median, upper, 5e-5);
    close(found.tau(), tauLower, tauMedian, tauUpper, 5e-5);
  }

  private static CountsPosterior shares(double scale) {
    int[][] cohorts = {
      {55, 97}, {205, 578}, {41, 134}, {30, 194}, {17, 46},
      {16, 57}, {11, 27}, {62, 142}, {64, 282}, {25, 56}
    };
    return CountsPosterior.of(
            MarginalLikelihood.of(
                ExactLikelihood.Model.PROPORTION,
                Arrays.stream(cohorts).map(one -> new ArmCounts(one[0], one[1])).toList()),
            new CentrePrior.Normal(0, 1.5),
            new TauPrior.HalfNormal(scale))
        .orElseThrow();
  }

  private static double logit(double share) {
    return Math.log(share / (1 - share));
  }
}
