package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Fits whose integrals a fixed number of points does not hold. */
class LatticeFitTest {
  private static final int[] EVENTS = {0, 10, 4, 0, 6, 8, 5};
  private static final int[] TOTALS = {12, 10, 4, 11, 10, 8, 5};

  private static LikelihoodFit.Estimate fit(int points) {
    return (LikelihoodFit.Estimate) BinomialNormal.fit(EVENTS, TOTALS, points);
  }

  @Test
  void theNumberOfPointsNoLongerMovesTheAnswer() {
    LikelihoodFit.Estimate few = fit(25);
    LikelihoodFit.Estimate many = fit(200);

    assertEquals(LikelihoodFit.Points.REFINED, few.points());
    assertEquals(many.estimate(), few.estimate(), 1e-4 * many.standardError());
    assertEquals(many.standardError(), few.standardError(), 1e-4 * many.standardError());
    assertEquals(many.tau(), few.tau(), 1e-4 * many.tau());
  }

  /**
   * By the integral itself: a trapezium rule of 20,001 points over the true value of each series.
   */
  @Test
  void itStandsAtTheTopOfTheIntegralItself() {
    LikelihoodFit.Estimate top = fit(25);

    assertEquals(integral(top.estimate(), top.tau()), top.logLikelihood(), 1e-7);
    for (double way : new double[] {-1, 1}) {
      assertTrue(
          integral(top.estimate() + way * 0.1 * top.standardError(), top.tau())
              < top.logLikelihood());
      assertTrue(integral(top.estimate(), top.tau() * (1 + way * 0.05)) < top.logLikelihood());
    }
  }

  private static double integral(double mean, double tau) {
    double sum = 0;
    for (int i = 0; i < EVENTS.length; i++) {
      double part = 0;
      for (int j = -10_000; j <= 10_000; j++) {
        double u = j / 1000.0;
        double theta = mean + tau * u;
        double log =
            EVENTS[i] * -Math.log1p(Math.exp(-theta))
                + (TOTALS[i] - EVENTS[i]) * -Math.log1p(Math.exp(theta));
        part += Math.exp(log - u * u / 2) / 1000;
      }
      sum +=
          Math.log(part / Math.sqrt(2 * Math.PI))
              + BinomialLikelihoods.logChoose(TOTALS[i], EVENTS[i]);
    }
    return sum;
  }

  @Test
  void pointsThatAreEnoughStand() {
    LikelihoodFit.Estimate fit =
        (LikelihoodFit.Estimate)
            BinomialNormal.fit(new int[] {6, 20, 12, 3}, new int[] {20, 30, 40, 10}, 25);

    assertEquals(LikelihoodFit.Points.ENOUGH, fit.points());
  }
}
