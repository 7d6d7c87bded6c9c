package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Sets in which every study has no event or only events. For proportions the likelihood of n
 * patients without or with nothing but events is the mean of p^n or (1 - p)^n, never above the mean
 * of p or 1 - p, so no spread reaches what all of them tend to.
 */
class AllAtALimitTest {
  private static final LikelihoodFit NO_TOP =
      new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.SPREAD_RISES);

  @Test
  void emptyAndFullSeriesHaveNoHighestPoint() {
    assertEquals(
        NO_TOP,
        BinomialNormal.fit(
            new int[] {0, 13, 10, 11, 7, 14, 7, 2}, new int[] {9, 13, 10, 11, 7, 14, 7, 2}, 25));
    assertEquals(NO_TOP, BinomialNormal.fit(new int[] {0, 1, 2, 1}, new int[] {1, 1, 2, 1}, 25));
    assertEquals(NO_TOP, BinomialNormal.fit(new int[] {0, 9, 0}, new int[] {30, 9, 4}, 200));
  }

  @Test
  void oneSeriesInsideGivesAHighestPoint() {
    LikelihoodFit fit = BinomialNormal.fit(new int[] {0, 13, 10, 3}, new int[] {9, 13, 10, 6}, 25);

    assertInstanceOf(LikelihoodFit.Estimate.class, fit);
  }

  @Test
  void tablesThatContradictEachOtherHaveNoHighestPointEither() {
    double[] events = {0, 9, 0};
    double[] totals = {14, 9, 12};
    double[] otherEvents = {1, 0, 7};
    double[] otherTotals = {9, 11, 12};

    assertEquals(NO_TOP, FourfoldNormal.conditional(events, totals, otherEvents, otherTotals, 25));
  }

  /** Single patients tell nothing of the spread, which is then 0, and the share is that of all. */
  @Test
  void singlePatientsHaveTheirShare() {
    LikelihoodFit.Estimate fit =
        (LikelihoodFit.Estimate)
            BinomialNormal.fit(new int[] {1, 0, 1, 1}, new int[] {1, 1, 1, 1}, 25);

    assertEquals(0, fit.tau());
    assertEquals(Math.log(3), fit.estimate(), 1e-9);
    assertTrue(fit.converged());
  }
}
