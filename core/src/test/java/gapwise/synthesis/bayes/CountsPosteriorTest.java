package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.effect.TwoRates;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.likelihood.MeanOverStudies;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Posteriors of counts. Numbers without another source are those of NumPy and SciPy over dense
 * grids: counts_posterior.py beside the tests.
 */
class CountsPosteriorTest {
  private static final double CLOSE = 1e-5;

  private static CountsPosterior shares(double scale, int... counts) {
    return CountsPosterior.of(
            MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, arms(counts)),
            new CentrePrior.UniformShare(),
            new TauPrior.HalfNormal(scale))
        .orElseThrow();
  }

  private static List<ArmCounts> arms(int... counts) {
    java.util.ArrayList<ArmCounts> arms = new java.util.ArrayList<>();
    for (int i = 0; i < counts.length; i += 2) {
      arms.add(new ArmCounts(counts[i], counts[i + 1]));
    }
    return arms;
  }

  private static CountsPosterior ratios(ExactLikelihood.Model model, StudyData... studies) {
    return CountsPosterior.of(
            MarginalLikelihood.of(model, List.of(studies)),
            new CentrePrior.Normal(0, 2.82),
            new TauPrior.HalfNormal(0.5))
        .orElseThrow();
  }

  /**
   * Where no series has an event the density falls only like the root of the rate: the grid has to
   * reach so far that its step leaves this.
   */
  private static final double FAR = 2e-4;

  private static void holds(Marginal marginal, double lower, double median, double upper) {
    holds(marginal, lower, median, upper, CLOSE);
  }

  private static void holds(
      Marginal marginal, double lower, double median, double upper, double close) {
    Interval limits = marginal.equalTailed(0.95);
    assertArrayEquals(
        new double[] {lower, median, upper},
        new double[] {limits.lower(), marginal.median(), limits.upper()},
        close);
  }

  @Test
  void twoSmallSeriesAgreeWithDenseGrids() {
    CountsPosterior posterior = shares(1, 12, 14, 23, 27);

    holds(posterior.centre(), 0.12987315, 1.59530042, 2.82383499);
    holds(posterior.predictive(), -0.77699560, 1.61880220, 3.55403344);
    holds(
        posterior.average(MeanOverStudies::logitOfProportion), 0.09578696, 1.49207470, 2.60736948);
    assertEquals(0.61284546, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  @Test
  void oneFullSeriesHasAPosteriorToo() {
    CountsPosterior posterior = shares(1, 9, 9);

    holds(posterior.centre(), -0.39204608, 2.24802731, 5.76592281);
    holds(posterior.predictive(), -1.57849030, 2.33603156, 6.29095448);
    holds(
        posterior.average(MeanOverStudies::logitOfProportion), -0.26226168, 1.95811125, 5.42910064);
    assertEquals(0.92303517, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  @Test
  void emptySeriesBesideOneWithAnEventAgreeWithDenseGrids() {
    CountsPosterior posterior = shares(0.5, 0, 7, 0, 12, 1, 30);

    holds(posterior.centre(), -5.38963177, -3.36319381, -1.96821531);
    holds(posterior.predictive(), -5.60080179, -3.37582593, -1.65943364);
    holds(
        posterior.average(MeanOverStudies::logitOfProportion),
        -5.28000171,
        -3.27423024,
        -1.83759795);
    assertEquals(0.37858391, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  @Test
  void ratesAgreeWithDenseGrids() {
    CountsPosterior posterior =
        CountsPosterior.of(
                MarginalLikelihood.of(
                    ExactLikelihood.Model.RATE,
                    List.of(new ArmRate(0, 9), new ArmRate(3, 20), new ArmRate(15, 28))),
                new CentrePrior.UniformRate(),
                new TauPrior.HalfNormal(1))
            .orElseThrow();

    holds(posterior.centre(), -2.68278785, -1.20019544, 1.20507933);
    holds(posterior.predictive(), -4.06112414, -1.20497546, 2.61849310);
    holds(
        posterior.average((centre, tau) -> centre + tau * tau / 2),
        -2.00525976,
        -0.72965419,
        4.07060185);
    assertEquals(1.12953825, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  private static CountsPosterior rates(CentrePrior centre, double scale, double... countsAndTimes) {
    java.util.ArrayList<ArmRate> arms = new java.util.ArrayList<>();
    for (int i = 0; i < countsAndTimes.length; i += 2) {
      arms.add(new ArmRate(countsAndTimes[i], countsAndTimes[i + 1]));
    }
    return CountsPosterior.of(
            MarginalLikelihood.of(ExactLikelihood.Model.RATE, arms),
            centre,
            new TauPrior.HalfNormal(scale))
        .orElseThrow();
  }

  private static Marginal average(CountsPosterior posterior) {
    return posterior.average((centre, tau) -> centre + tau * tau / 2);
  }

  @Test
  void oneSeriesWithoutAnEventHasADistributionUnderThePriorOfJeffreys() {
    CountsPosterior posterior = rates(new CentrePrior.JeffreysRate(), 1, 0, 12);

    holds(posterior.centre(), -9.81552945, -3.53783555, 1.22201501, FAR);
    holds(posterior.predictive(), -10.08639304, -3.60684545, 2.02919945, FAR);
    holds(average(posterior), -9.41043072, -3.12141119, 3.81235713, FAR);
    assertEquals(0.92131356, posterior.tau().mean().orElseThrow(), FAR);
  }

  @Test
  void twoRatesAgreeWithDenseGridsUnderThePriorOfJeffreys() {
    CountsPosterior posterior = rates(new CentrePrior.JeffreysRate(), 1, 6, 14, 19, 23);

    holds(posterior.centre(), -1.48725824, -0.36852928, 1.43085468);
    holds(posterior.predictive(), -2.38301544, -0.37553960, 2.34834546);
    holds(average(posterior), -1.06042357, -0.21496535, 3.03601737);
    assertEquals(0.67850365, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  /** Where a first look ends just beside the top, the search must not swing about it. */
  @Test
  void aTopAtTheEdgeOfAFirstLookIsFound() {
    CountsPosterior posterior =
        rates(
            new CentrePrior.UniformRate(),
            0.5,
            new double[] {4, 6, 49, 15, 3, 30, 6, 29, 12, 14, 3, 6, 4, 22, 13, 20, 7, 16, 9, 24});

    holds(posterior.centre(), -1.29718776, -0.69226190, -0.08055265);
    holds(posterior.predictive(), -2.55162955, -0.69277772, 1.17743781);
    holds(average(posterior), -0.91412288, -0.33315246, 0.50325471);
    assertEquals(0.86456016, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  @Test
  void oddsRatiosGivenTheMarginsAgreeWithDenseGrids() {
    CountsPosterior posterior =
        ratios(
            ExactLikelihood.Model.ODDS_RATIO_CONDITIONAL,
            new TwoByTwo(new ArmCounts(0, 9), new ArmCounts(3, 9)),
            new TwoByTwo(new ArmCounts(1, 19), new ArmCounts(5, 19)));

    holds(posterior.centre(), -4.66741156, -2.21797531, -0.39472044);
    holds(posterior.predictive(), -4.85895354, -2.22492856, -0.15236327);
    assertEquals(0.38884290, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  @Test
  void rateRatiosGivenTheEventsAgreeWithDenseGrids() {
    CountsPosterior posterior =
        ratios(
            ExactLikelihood.Model.RATE_RATIO,
            new TwoRates(new ArmRate(2, 40), new ArmRate(9, 38)),
            new TwoRates(new ArmRate(1, 12), new ArmRate(2, 15)));

    holds(posterior.centre(), -2.84344775, -1.26555582, 0.12964056);
    holds(posterior.predictive(), -3.10626106, -1.27396847, 0.46393098);
    assertEquals(0.38316725, posterior.tau().mean().orElseThrow(), CLOSE);
  }

  /** With tau held near 0 and a uniform prior the share of all counts is Beta(x + 1, n - x + 1). */
  @Test
  void withoutSpreadTheShareHasABetaDistribution() {
    Marginal centre = shares(1e-4, 9, 9).centre();

    // P(share > 0.8) = 1 - 0.8^10, and the lower limit is 0.025^(1/10), by hand.
    assertEquals(1 - Math.pow(0.8, 10), centre.above(Math.log(4)), 1e-6);
    double lower = Math.pow(0.025, 0.1);
    assertEquals(Math.log(lower / (1 - lower)), centre.equalTailed(0.95).lower(), 1e-5);
  }

  @Test
  void eventsAndTheirAbsenceMirrorEachOther() {
    Interval with = shares(1, 12, 14, 9, 9, 3, 11).centre().equalTailed(0.95);
    Interval without = shares(1, 2, 14, 0, 9, 8, 11).centre().equalTailed(0.95);

    assertEquals(with.lower(), -without.upper(), 1e-6);
    assertEquals(with.upper(), -without.lower(), 1e-6);
  }

  @Test
  void seriesThatContradictThePriorOfTauPullItUp() {
    CountsPosterior posterior = shares(0.1, 5, 1000, 995, 1000);

    assertEquals(0, posterior.centre().median(), 1e-5);
    assertTrue(posterior.tau().equalTailed(0.95).lower() > 0.6);
  }

  /** By the normal posterior of its own kind, which a thousand patients a series come near. */
  @Test
  void manySeriesOfAThousandPatientsAreNearlyNormal() {
    int[] counts = new int[80];
    double[] effects = new double[40];
    double[] variances = new double[40];
    java.util.Random random = new java.util.Random(5);
    for (int i = 0; i < 40; i++) {
      double logit = 0.4 + 0.3 * random.nextGaussian();
      counts[2 * i] = (int) Math.round(20_000 / (1 + Math.exp(-logit)));
      counts[2 * i + 1] = 20_000;
      double x = counts[2 * i];
      effects[i] = Math.log(x / (20_000 - x));
      variances[i] = 1 / x + 1 / (20_000 - x);
    }
    Proper normal =
        (Proper)
            Posterior.of(
                gapwise.synthesis.heterogeneity.EffectSample.of(effects, variances),
                new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(1)));
    CountsPosterior exact = shares(1, counts);

    assertEquals(normal.mean().median(), exact.centre().median(), 2e-3);
    assertEquals(normal.tau().orElseThrow().median(), exact.tau().median(), 1e-3);
  }

  @Test
  void theSameSeriesGiveTheSameBytes() {
    assertEquals(
        shares(1, 12, 14, 23, 27).centre().median(), shares(1, 12, 14, 23, 27).centre().median());
  }

  @Test
  void otherGroupsThatShareTauNarrowIt() {
    MarginalLikelihood own =
        MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, arms(12, 14, 23, 27));
    MarginalLikelihood other =
        MarginalLikelihood.of(
            ExactLikelihood.Model.PROPORTION,
            arms(8, 10, 16, 20, 32, 40, 24, 30, 12, 15, 40, 50, 28, 35, 20, 25));
    TauPrior prior = new TauPrior.HalfNormal(1);
    CountsPosterior alone =
        CountsPosterior.of(own, new CentrePrior.UniformShare(), prior).orElseThrow();
    CountsPosterior shared =
        CountsPosterior.of(own, List.of(other), new CentrePrior.UniformShare(), prior)
            .orElseThrow();

    assertTrue(shared.tau().equalTailed(0.95).upper() < alone.tau().equalTailed(0.95).upper() / 2);
    assertTrue(
        shared.centre().equalTailed(0.95).lower() > alone.centre().equalTailed(0.95).lower());
  }

  /** Without spread, under a uniform rate, no event in a time T leaves an exponential rate. */
  @Test
  void timesThatDifferByManyPowersOfTenHaveAPosterior() {
    MarginalLikelihood none =
        MarginalLikelihood.of(
            ExactLikelihood.Model.RATE, List.of(new ArmRate(0, 1e-9), new ArmRate(0, 1e9)));

    assertEquals(
        Math.log(Math.log(2) / 1e9),
        CountsPosterior.of(none, new CentrePrior.UniformRate(), new TauPrior.HalfNormal(1e-4))
            .orElseThrow()
            .centre()
            .median(),
        1e-5);
    assertTrue(
        CountsPosterior.of(none, new CentrePrior.UniformRate(), new TauPrior.HalfNormal(1))
            .isPresent());
  }
}
