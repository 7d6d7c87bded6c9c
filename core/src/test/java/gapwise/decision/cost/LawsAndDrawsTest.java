package gapwise.decision.cost;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.numeric.RandomValues;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class LawsAndDrawsTest {
  private static final double PRINTED = 5e-7;

  /** Formulas worked out by hand; the first in print in Briggs, Claxton and Sculpher 2006. */
  @Test
  void lawsByTheirMoments() {
    Law.Beta share = Law.Beta.of(.76, .03);
    assertEquals(153.266667, share.a(), PRINTED);
    assertEquals(48.4, share.b(), PRINTED);
    assertEquals(.76, share.mean(), 1e-12);
    Law.Beta other = Law.Beta.of(.85, .05);
    assertEquals(42.5, other.a(), 1e-9);
    assertEquals(7.5, other.b(), 1e-9);
    Law.Gamma cost = Law.Gamma.of(12_000, 3_000);
    assertEquals(16, cost.shape(), 1e-12);
    assertEquals(750, cost.scale(), 1e-12);
    assertEquals(12_000, cost.mean(), 1e-9);
    Law.LogNormal tail = Law.LogNormal.of(12_000, 3_000);
    assertEquals(9.362350, tail.mu(), PRINTED);
    assertEquals(.246221, tail.sigma(), PRINTED);
    assertEquals(12_000, tail.mean(), 1e-8);
    Law.LogNormal ratio = Law.LogNormal.ofRatio(.509, .365, .710);
    assertEquals(.169740, ratio.sigma(), PRINTED);
    assertEquals(.516386, ratio.mean(), PRINTED);
  }

  private static void moments(Law law, double mean, double sd) {
    RandomValues random = RandomValues.ofSeed(6);
    int n = 100_000;
    double[] drawn = new double[n];
    Arrays.setAll(drawn, i -> law.draw(random));
    double found = Arrays.stream(drawn).average().orElseThrow();
    double variance = Arrays.stream(drawn).map(x -> (x - found) * (x - found)).sum() / n;
    assertEquals(mean, found, 4 * sd / Math.sqrt(n), law::toString);
    // With these tails the spread of a deviation is under 1 %.
    assertEquals(sd, Math.sqrt(variance), 0.03 * sd, law::toString);
  }

  @Test
  void drawsHaveTheMomentsOfTheirLaws() {
    moments(Law.Beta.of(.85, .05), .85, .05);
    moments(Law.Gamma.of(12_000, 3_000), 12_000, 3_000);
    moments(Law.LogNormal.of(12_000, 3_000), 12_000, 3_000);
    assertEquals(3, new Law.Known(3).draw(RandomValues.ofSeed(1)));
  }

  /** Row A of the published model: B has the mean .201845 and the deviation .009636 (by hand). */
  @Test
  void aRowOfChancesFromCounts() {
    DirichletRow row = DirichletRow.of(1251, 350, 116, 17, 0);
    RandomValues random = RandomValues.ofSeed(6);
    int n = 50_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double[] chances = row.draw(random);
      assertEquals(1, Arrays.stream(chances).sum(), 1e-12);
      assertEquals(0, chances[4]);
      sum += chances[1];
      squares += chances[1] * chances[1];
    }
    assertEquals(.201845, sum / n, 4 * .009636 / Math.sqrt(n));
    assertEquals(.009636, Math.sqrt(squares / n - sum / n * sum / n), .0002);
  }

  private static CostsAndEffects normal(int n) {
    RandomValues random = RandomValues.ofSeed(12);
    double[][] costs = new double[2][n];
    double[][] effects = new double[2][n];
    for (int i = 0; i < n; i++) {
      double first = random.normal();
      double second = 0.25 * first + Math.sqrt(1 - 0.25 * 0.25) * random.normal();
      effects[1][i] = 0.1 + 0.05 * first;
      costs[1][i] = 1000 + 400 * second;
    }
    return CostsAndEffects.of(List.of("a", "b"), costs, effects);
  }

  /**
   * Extra effect .1 (sd .05), extra cost 1000 (sd 400), correlation .25: net benefit is normal, so
   * its chance of being above 0 and what perfect information is worth are known (SciPy).
   */
  @Test
  void acceptabilityOfNormalCostsAndEffects() {
    int n = 200_000;
    CostsAndEffects drawn = normal(n);
    double[] lambdas = {0, 5_000, 10_000, 20_000, 50_000};
    double[] shares = {.006210, .114322, .5, .846283, .950054};
    for (int i = 0; i < lambdas.length; i++) {
      Acceptance at = drawn.at(lambdas[i]);
      double error = 4 * Math.sqrt(shares[i] * (1 - shares[i]) / n);
      assertEquals(shares[i], at.shares().get(1), error, "" + lambdas[i]);
      assertEquals(1, at.shares().get(0) + at.shares().get(1), 1e-12);
    }
    assertEquals(.977250, drawn.at(1e9).shares().get(1), 4 * Math.sqrt(.97725 * .02275 / n));
    // The loss where B is chosen has a spread below 400 here.
    assertEquals(78.476728, drawn.at(20_000).perfectInformation(), 4 * 400 / Math.sqrt(n));
    assertEquals(1, drawn.at(20_000).best());
    assertEquals(drawn.at(20_000).shares().get(1), drawn.at(20_000).frontier());
    Increment extra = drawn.increment(1, 0);
    double better = NormalDistribution.of(0.1, 0.05).survivalProbability(0);
    assertEquals(better, extra.dearerBetter() + extra.cheaperBetter(), .002);
    assertEquals(10_000, extra.ratio().orElseThrow(), 250);
    assertTrue(drawn.increment(0, 1).ratio().isEmpty());
  }

  /** By hand: A is best in two of three draws by little, B in one by much. */
  @Test
  void theLikeliestToBeBestIsNotAlwaysBestOnAverage() {
    CostsAndEffects drawn =
        CostsAndEffects.of(
            List.of("A", "B"),
            new double[][] {{0, 0, 0}, {0, 0, 0}},
            new double[][] {{1, 1, 1}, {0, 0, 7}});
    Acceptance at = drawn.curve(List.of(1.0)).get(0);
    assertEquals(2 / 3.0, at.shares().get(0), 1e-12);
    assertEquals(1, at.best());
    assertEquals(1 / 3.0, at.frontier(), 1e-12);
    assertEquals(List.of(1.0, 7 / 3.0), at.netBenefits());
    // Mean of 1, 1, 7 less 7/3.
    assertEquals(2 / 3.0, at.perfectInformation(), 1e-12);
  }

  @Test
  void drawsThatDoNotBelongTogetherAreRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            CostsAndEffects.of(List.of("A", "B"), new double[][] {{1}, {1, 2}}, new double[2][1]));
    assertThrows(IllegalArgumentException.class, () -> Law.Beta.of(.5, .6));
    assertThrows(IllegalArgumentException.class, () -> DirichletRow.of(0, 0));
    assertThrows(IllegalArgumentException.class, () -> new Discount(-0.1, 1));
  }
}
