package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.Interval;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Values by SciPy's beta-binomial distribution and a general optimiser
 * (core/src/test/reference/beta_binomial.py), and what must hold for any counts.
 */
class BetaBinomialTest {
  /** Events and totals of proportions-full-arms. */
  private static final double[] EVENTS = {9, 12, 30, 7, 18, 0, 22, 14, 5, 41};

  private static final double[] TOTALS = {9, 12, 32, 9, 20, 4, 25, 14, 8, 44};

  private static BetaBinomialFit.Estimate top(double[] events, double[] totals) {
    BetaBinomialFit.Estimate top =
        assertInstanceOf(BetaBinomialFit.Estimate.class, BetaBinomial.fit(events, totals));
    assertTrue(top.converged());
    return top;
  }

  private static void holds(
      BetaBinomialFit.Estimate top, double logit, double error, double rho, double logLikelihood) {
    assertEquals(logit, top.logit(), 1e-7);
    assertEquals(error, top.standardError(), 1e-7);
    assertEquals(rho, top.intraclassCorrelation(), 1e-8);
    assertEquals(logLikelihood, top.logLikelihood(), 1e-7);
  }

  @Test
  void seriesOfWhichSomeAreFullAreFittedAsByAGeneralOptimiser() {
    BetaBinomialFit.Estimate top = top(EVENTS, TOTALS);
    holds(top, 1.540185459, 0.535736281, 0.2318149274, -21.35715759);
    FittedBeta beta = new FittedBeta(top.logit(), top.intraclassCorrelation());
    Interval limits = beta.interval(0.95);
    assertEquals(0.341936420, share(limits.lower()), 1e-7);
    assertEquals(0.999407212, share(limits.upper()), 1e-7);
    assertEquals(0.075946827, beta.below(0), 1e-7);
    assertEquals(0.075946827, beta.below(1e-9), 1e-7);
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  /** Adherence to treatment in thirteen studies: published/adherence-proportions. */
  @Test
  void publishedSharesAreFittedAsByAGeneralOptimiser() {
    holds(
        top(
            new double[] {11, 24, 179, 82, 60, 11, 99, 9, 88, 17, 26, 23, 40},
            new double[] {29, 33, 326, 240, 110, 29, 244, 17, 215, 26, 138, 55, 54}),
        -0.102923176,
        0.172425868,
        0.0794699948,
        -50.16561624);
  }

  @Test
  void fewSeriesOneOfThemWithoutEventsAreFittedAsByAGeneralOptimiser() {
    BetaBinomialFit.Estimate top =
        top(new double[] {81, 15, 0, 1}, new double[] {263, 148, 20, 29});
    holds(top, -1.979980163, 0.561127032, 0.1214259548, -12.71512678);
  }

  /**
   * Geissler's families of twelve in Saxony (Lindsey and Altham, Applied Statistics 1998;47:149): a
   * log likelihood of -12,492.9 and shapes of 34.1 and 31.6 are printed (from memory).
   */
  @Test
  void theFamiliesOfSaxonyAreFittedAsPrinted() {
    int[] boys = {3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7};
    double[] events =
        IntStream.range(0, boys.length)
            .boxed()
            .flatMap(b -> IntStream.range(0, boys[b]).mapToObj(family -> b))
            .mapToDouble(b -> b)
            .toArray();
    double[] totals = new double[events.length];
    Arrays.fill(totals, 12);
    BetaBinomialFit.Estimate top = top(events, totals);
    holds(top, 0.076913091, 0.007974767, 0.0149967551, -12492.87135855);
    double size = 1 / top.intraclassCorrelation() - 1;
    assertEquals(34.1, share(top.logit()) * size, 0.05);
    assertEquals(31.6, share(-top.logit()) * size, 0.05);
    assertEquals(-12492.9, top.logLikelihood(), 0.05);
  }

  @Test
  void withoutCorrelationItIsTheBinomialLikelihoodOfAllCountsTogether() {
    // 30 of 100 in each way of counting: the same share in every series.
    BetaBinomialFit.Estimate top = top(new double[] {6, 9, 12, 3}, new double[] {20, 30, 40, 10});
    assertEquals(0, top.intraclassCorrelation());
    assertEquals(Math.log(30.0 / 70), top.logit(), 1e-12);
    assertEquals(Math.sqrt(1.0 / 30 + 1.0 / 70), top.standardError(), 1e-12);
    LikelihoodFit.Estimate binomial =
        (LikelihoodFit.Estimate)
            BinomialNormal.fit(new double[] {6, 9, 12, 3}, new double[] {20, 30, 40, 10}, 25);
    assertEquals(binomial.logLikelihood(), top.logLikelihood(), 1e-10);
    assertEquals(0, new FittedBeta(top.logit(), 0).below(top.logit() - 1e-9));
    assertEquals(1, new FittedBeta(top.logit(), 0).below(top.logit() + 1e-9));
  }

  @Test
  void patientsOneByOneSayNothingOfACorrelation() {
    BetaBinomialFit.Estimate top = top(new double[] {1, 0, 1}, new double[] {1, 1, 1});
    assertEquals(0, top.intraclassCorrelation());
    assertEquals(Math.log(2), top.logit(), 1e-12);
  }

  @Test
  void theOrderOfSeriesChangesNothing() {
    double[] events = {41, 5, 14, 22, 0, 18, 7, 30, 12, 9};
    double[] totals = {44, 8, 14, 25, 4, 20, 9, 32, 12, 9};
    assertEquals(top(EVENTS, TOTALS), top(events, totals));
  }

  @Test
  void countingThoseWithoutTheEventMirrorsTheShare() {
    double[] others =
        IntStream.range(0, EVENTS.length).mapToDouble(i -> TOTALS[i] - EVENTS[i]).toArray();
    BetaBinomialFit.Estimate one = top(EVENTS, TOTALS);
    BetaBinomialFit.Estimate other = top(others, TOTALS);
    holds(
        other, -one.logit(), one.standardError(), one.intraclassCorrelation(), one.logLikelihood());
    Interval limits = new FittedBeta(one.logit(), one.intraclassCorrelation()).interval(0.9);
    Interval mirrored = new FittedBeta(other.logit(), other.intraclassCorrelation()).interval(0.9);
    assertEquals(limits.lower(), -mirrored.upper(), 1e-6);
    assertEquals(limits.upper(), -mirrored.lower(), 1e-6);
  }

  /** Registers of millions: sums of ten nodes a stretch against every patient in 80 bits. */
  @Test
  void millionsOfPatientsAreFittedAsPatientByPatient() {
    BetaBinomialFit.Estimate top =
        top(new double[] {812_345, 1_203, 40, 7}, new double[] {4_000_000, 9_001, 150, 300});
    assertEquals(-1.708439934, top.logit(), 1e-8);
    assertEquals(0.0824643250, top.intraclassCorrelation(), 1e-9);
    assertEquals(-31.12666138, top.logLikelihood(), 1e-7);
    // Bends by differences of sums of millions of terms keep five digits.
    assertEquals(0.403805281, top.standardError(), 5e-6);
  }

  @Test
  void saysWhyThereIsNoTop() {
    assertEquals(LikelihoodFit.Reason.MEAN_FALLS, why(new double[] {0, 0}, new double[] {5, 9}));
    assertEquals(LikelihoodFit.Reason.MEAN_RISES, why(new double[] {5, 9}, new double[] {5, 9}));
    assertEquals(
        LikelihoodFit.Reason.SPREAD_RISES, why(new double[] {5, 0, 1}, new double[] {5, 3, 1}));
    assertEquals(LikelihoodFit.Reason.NO_INFORMATION, why(new double[] {}, new double[] {}));
  }

  private static LikelihoodFit.Reason why(double[] events, double[] totals) {
    return assertInstanceOf(BetaBinomialFit.NoMaximum.class, BetaBinomial.fit(events, totals))
        .reason();
  }

  @Test
  void limitsStayNumbersWhereNearlyAllOfTheDistributionLiesAtItsEnds() {
    Interval limits = new FittedBeta(-3, 0.9999).interval(0.99);
    assertTrue(limits.lower() < -30 && limits.upper() > 30, limits.toString());
    assertTrue(new FittedBeta(-3, 0.9999).below(-5) > 0.9);
  }
}
