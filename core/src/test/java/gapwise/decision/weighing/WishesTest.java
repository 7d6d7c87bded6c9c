package gapwise.decision.weighing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.numeric.RandomValues;
import gapwise.problem.Problem;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WishesTest {
  private static final int N = 100_000;

  private static List<Criterion> criteria(int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> new Criterion("c" + (i + 1), "Criterion " + (i + 1), 0, 1))
        .toList();
  }

  private static WeightSampler sampler(int count, Wishes wishes) {
    List<Criterion> criteria = criteria(count);
    assertEquals(List.of(), new WishCheck(criteria, wishes).problems());
    return new WeightSampler(WeightBounds.of(criteria, wishes), RandomValues.ofSeed(2));
  }

  private static double[] means(WeightSampler sampler, int count, int n) {
    double[] sums = new double[count];
    for (int i = 0; i < n; i++) {
      double[] weights = sampler.next();
      double sum = 0;
      for (int c = 0; c < count; c++) {
        sums[c] += weights[c];
        sum += weights[c];
      }
      assertEquals(1, sum, 1e-9);
    }
    for (int c = 0; c < count; c++) {
      sums[c] /= n;
    }
    return sums;
  }

  private static void near(double[] expected, double[] found) {
    for (int c = 0; c < expected.length; c++) {
      assertEquals(expected[c], found[c], 4 * 0.25 / Math.sqrt(N), "weight " + c);
    }
  }

  /** Exact: the k-th of n ordered weights has the mean (1/n)(1/k + ... + 1/n). */
  @Test
  void meansUnderAFullOrder() {
    Wishes three = Wishes.none().inOrder(List.of("c1", "c2", "c3"));
    near(new double[] {11 / 18.0, 5 / 18.0, 1 / 9.0}, means(sampler(3, three), 3, N));
    Wishes four = Wishes.none().inOrder(List.of("c1", "c2", "c3", "c4"));
    near(new double[] {25 / 48.0, 13 / 48.0, 7 / 48.0, 1 / 16.0}, means(sampler(4, four), 4, N));
  }

  /** Exact: within a triangle with corners (1,0,0), (.2,.8,0), (.2,0,.8) the mean is their mean. */
  @Test
  void aLeastWeightMovesAllMeans() {
    double[] means = means(sampler(3, Wishes.none().atLeast("c1", 0.2)), 3, N);
    near(new double[] {1.4 / 3, 0.8 / 3, 0.8 / 3}, means);
  }

  /** By hand, two criteria: w1 is uniform from 0.3 to 0.5. */
  @Test
  void limitsFromBothSidesAreKeptByThrowingAway() {
    WeightSampler sampler = sampler(2, Wishes.none().atLeast("c1", 0.3).atMost("c1", 0.5));
    assertFalse(sampler.walks());
    near(new double[] {0.4, 0.6}, means(sampler, 2, N));
  }

  /** By symmetry the mean of each is a fifth, while hardly any uniform weights fit. */
  @Test
  void whereFewFitAWalkFindsThem() {
    Wishes narrow = Wishes.none();
    for (int c = 1; c <= 5; c++) {
      narrow = narrow.atLeast("c" + c, 0.1).atMost("c" + c, 0.22);
    }
    WeightSampler sampler = sampler(5, narrow);
    assertTrue(sampler.walks());
    double[] means = means(sampler, 5, 20_000);
    for (double mean : means) {
      assertEquals(0.2, mean, 0.002);
    }
  }

  /**
   * A walk in order: with c1 to c5 in order and c1 at most 0.24 few sets fit. Expected means by
   * throwing away, 2,000 sets that fit, of plain uniform weights.
   */
  @Test
  void aWalkKeepsToTheOrderAndMeetsWhatThrowingAwayGives() {
    Wishes wishes = Wishes.none().inOrder(List.of("c1", "c2", "c3", "c4", "c5")).atMost("c1", 0.24);
    WeightSampler sampler = sampler(5, wishes);
    assertTrue(sampler.walks());
    WeightBounds bounds = WeightBounds.of(criteria(5), wishes);
    double[] walked = new double[5];
    for (int i = 0; i < 20_000; i++) {
      double[] weights = sampler.next();
      assertTrue(weights[0] <= 0.24 + 1e-9);
      for (int c = 0; c < 5; c++) {
        walked[c] += weights[c] / 20_000;
        assertTrue(c == 0 || weights[c] <= weights[c - 1] + 1e-9);
      }
    }
    RandomValues random = RandomValues.ofSeed(9);
    double[] thrown = new double[5];
    int fit = 0;
    while (fit < 2_000) {
      double[] weights = IntStream.range(0, 5).mapToDouble(i -> random.exponential()).toArray();
      double sum = DoubleStream.of(weights).sum();
      double[] sorted = DoubleStream.of(weights).map(weight -> -weight / sum).sorted().toArray();
      double[] falling = DoubleStream.of(sorted).map(weight -> -weight).toArray();
      if (bounds.allow(falling)) {
        fit++;
        for (int c = 0; c < 5; c++) {
          thrown[c] += falling[c] / 2_000;
        }
      }
    }
    for (int c = 0; c < 5; c++) {
      assertEquals(thrown[c], walked[c], 0.0012, "weight " + c);
    }
  }

  @Test
  void wishesThatLeaveOneSetOfWeightsGiveIt() {
    double[] only =
        sampler(3, Wishes.none().atLeast("c1", 0.5).atLeast("c2", 0.3).atLeast("c3", 0.2)).next();
    assertEquals(0.5, only[0], 1e-9);
    double[] even = sampler(2, Wishes.none().inOrder(List.of("c1", "c2")).atMost("c1", 0.5)).next();
    assertEquals(0.5, even[1], 1e-9);
    WeightSampler fixed = sampler(3, Wishes.none().atLeast("c1", 0.3).atMost("c1", 0.3));
    near(new double[] {0.3, 0.35, 0.35}, means(fixed, 3, 20_000));
  }

  private static Problem refused(Wishes wishes) {
    List<Problem> problems =
        ((Weighing.Refused)
                Weighing.of(
                    List.of(new Alternative("a", "A"), new Alternative("b", "B")),
                    criteria(3),
                    Outcomes.of(
                        List.of(
                            List.of(new double[] {1}, new double[] {1}, new double[] {1}),
                            List.of(new double[] {0}, new double[] {0}, new double[] {0}))),
                    wishes,
                    1,
                    1_000))
            .problems();
    assertEquals(1, problems.size(), problems::toString);
    return problems.get(0);
  }

  @Test
  void wishesThatContradictEachOtherAreNamed() {
    Problem over = refused(Wishes.none().atLeast("c1", 0.7).atLeast("c3", 0.4));
    assertEquals("least-weights-over-1", over.code());
    assertTrue(over.message().contains("1.1 (Criterion 1 0.7, Criterion 3 0.4)"), over::message);
    Problem under = refused(Wishes.none().atMost("c1", 0.2).atMost("c2", 0.2).atMost("c3", 0.2));
    assertEquals("greatest-weights-under-1", under.code());
    Problem order =
        refused(Wishes.none().inOrder(List.of("c1", "c2")).atMost("c1", 0.2).atLeast("c2", 0.3));
    assertEquals("order-against-limits", order.code());
    assertTrue(order.message().contains("Criterion 1 stands before Criterion 2"));
    assertEquals(
        "limits-cross", refused(Wishes.none().atLeast("c2", 0.4).atMost("c2", 0.3)).code());
    assertEquals("unknown-criterion", refused(Wishes.none().atLeast("c9", 0.1)).code());
    assertEquals("weight-outside-0-to-1", refused(Wishes.none().atLeast("c1", 20)).code());
    assertEquals(
        "criterion-named-twice", refused(Wishes.none().inOrder(List.of("c1", "c1"))).code());
    // An order lifts what stands before a least weight: three times 0.4 is over 1.
    assertEquals(
        "least-weights-over-1",
        refused(Wishes.none().inOrder(List.of("c1", "c2", "c3")).atLeast("c3", 0.4)).code());
  }
}
