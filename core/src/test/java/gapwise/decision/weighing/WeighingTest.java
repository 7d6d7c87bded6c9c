package gapwise.decision.weighing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.numeric.RandomValues;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Exact shares, worked out by hand or by integration over the triangle of weights. Each is met
 * within four standard deviations of the simulation.
 */
class WeighingTest {
  private static final int N = 200_000;

  private static double near(double share) {
    return 4 * Math.sqrt(share * (1 - share) / N) + 1e-12;
  }

  private static List<Criterion> criteria(int count, double worst, double best) {
    return IntStream.range(0, count)
        .mapToObj(i -> new Criterion("c" + (i + 1), "Criterion " + (i + 1), worst, best))
        .toList();
  }

  private static List<Alternative> alternatives(int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> String.valueOf((char) ('A' + i)))
        .map(name -> new Alternative(name, name))
        .toList();
  }

  private static Outcomes known(double[][] outcomes) {
    return Outcomes.of(
        Arrays.stream(outcomes)
            .map(row -> Arrays.stream(row).mapToObj(value -> new double[] {value}).toList())
            .toList());
  }

  private static Weighed weigh(double[][] outcomes, Wishes wishes) {
    return (Weighed)
        Weighing.of(
            alternatives(outcomes.length),
            criteria(outcomes[0].length, 0, 1),
            known(outcomes),
            wishes,
            5,
            N);
  }

  private static void ranks(Weighed weighed, int alternative, double... shares) {
    List<Double> found = weighed.standings().get(alternative).ranks();
    for (int rank = 0; rank < shares.length; rank++) {
      assertEquals(shares[rank], found.get(rank), near(shares[rank]), alternative + " " + rank);
    }
    assertEquals(1, found.stream().mapToDouble(Double::doubleValue).sum(), 1e-9);
  }

  private static void central(Weighed weighed, int alternative, double... weights) {
    Standing.Favour favour = weighed.standings().get(alternative).favour().orElseThrow();
    for (int c = 0; c < weights.length; c++) {
      // A weight among draws with the alternative first has a spread of at most 0.25.
      double n = N * weighed.standings().get(alternative).first();
      assertEquals(weights[c], favour.weights().get(c), 4 * 0.25 / Math.sqrt(n), "weight " + c);
    }
    assertEquals(1, favour.confidence(), "all outcomes are known");
  }

  private static final double[][] FIRST = {{1, 0}, {0, 1}, {0.6, 0.6}};

  /** By hand: with w the first weight, A leads above 0.6, B below 0.4, C between. */
  @Test
  void twoSpecialistsAndOneGoodAtBoth() {
    Weighed weighed = weigh(FIRST, Wishes.none());
    ranks(weighed, 0, 0.4, 0.1, 0.5);
    ranks(weighed, 1, 0.4, 0.1, 0.5);
    ranks(weighed, 2, 0.2, 0.8, 0);
    central(weighed, 0, 0.8, 0.2);
    central(weighed, 2, 0.5, 0.5);
    assertFalse(weighed.walked());
  }

  @Test
  void whoIsNeverFirstIsSoUnderNoWishesStated() {
    Weighed weighed = weigh(FIRST, Wishes.none().inOrder(List.of("c1", "c2")));
    ranks(weighed, 0, 0.8, 0.2, 0);
    ranks(weighed, 1, 0, 0, 1);
    ranks(weighed, 2, 0.2, 0.8, 0);
    assertTrue(weighed.standings().get(1).favour().isEmpty());
  }

  private static final double[][] SECOND = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {0.5, 0.5, 0.5}};

  /** By geometry of the triangle of weights: four like triangles, one for each alternative. */
  @Test
  void threeSpecialistsAndOneGoodAtAll() {
    Weighed weighed = weigh(SECOND, Wishes.none());
    ranks(weighed, 0, 1 / 4.0, 1 / 12.0, 1 / 3.0, 1 / 3.0);
    ranks(weighed, 3, 1 / 4.0, 3 / 4.0, 0, 0);
    central(weighed, 0, 2 / 3.0, 1 / 6.0, 1 / 6.0);
    Weighed ordered = weigh(SECOND, Wishes.none().inOrder(List.of("c1", "c2", "c3")));
    ranks(ordered, 0, 3 / 4.0);
    ranks(ordered, 3, 1 / 4.0);
    central(ordered, 0, 2 / 3.0, 1 / 4.0, 1 / 12.0);
    central(ordered, 3, 4 / 9.0, 13 / 36.0, 7 / 36.0);
    Weighed fifth =
        weigh(SECOND, Wishes.none().atLeast("c1", .2).atLeast("c2", .2).atLeast("c3", .2));
    ranks(fifth, 0, 1 / 16.0);
    ranks(fifth, 3, 13 / 16.0);
    central(fifth, 0, 8 / 15.0, 7 / 30.0, 7 / 30.0);
  }

  /**
   * Numeric integration (SciPy dblquad, once): A about 0.7 and 0.4, B about 0.5 and 0.6, each
   * normal with a spread of 0.1. The range is wide, so that no draw is cut.
   */
  @Test
  void uncertainOutcomes() {
    RandomValues random = RandomValues.ofSeed(7);
    double[] means = {0.7, 0.4, 0.5, 0.6};
    double[][] columns = new double[4][N];
    for (int k = 0; k < 4; k++) {
      double mean = means[k];
      Arrays.setAll(columns[k], i -> mean + 0.1 * random.normal());
    }
    Outcomes draws =
        Outcomes.of(List.of(List.of(columns[0], columns[1]), List.of(columns[2], columns[3])));
    List<Criterion> wide = criteria(2, -1, 2);
    Weighed free = (Weighed) Weighing.of(alternatives(2), wide, draws, Wishes.none(), 11, N);
    ranks(free, 0, 0.5, 0.5);
    favour(free, 0.673051, 0.743488);
    Wishes order = Wishes.none().inOrder(List.of("c1", "c2"));
    Weighed ordered = (Weighed) Weighing.of(alternatives(2), wide, draws, order, 11, N);
    ranks(ordered, 0, 0.777713);
    favour(ordered, 0.771984, 0.830386);
    assertEquals(Map.of(), ordered.cuts());
    Weighed narrow =
        (Weighed) Weighing.of(alternatives(2), criteria(2, 0.3, 1.2), draws, Wishes.none(), 11, N);
    // 0.4 with a spread of 0.1 lies below 0.3 in 15.8655 of 100, 0.5 in 2.275, 0.6 in 0.135.
    assertEquals(0.158655 + 0.001350, (double) narrow.cuts().get("c2") / N, 0.004);
  }

  private static void favour(Weighed weighed, double weight, double confidence) {
    Standing.Favour favour = weighed.standings().get(0).favour().orElseThrow();
    assertEquals(weight, favour.weights().get(0), 4 * 0.25 / Math.sqrt(N / 2.0));
    // The weight it rests on is itself drawn, hence a little more.
    assertEquals(confidence, favour.confidence(), near(confidence) + 0.002);
  }

  @Test
  void alikeAlternativesShareTheirRanks() {
    Weighed weighed = weigh(new double[][] {{.5, .5}, {.5, .5}, {.1, .1}}, Wishes.none());
    ranks(weighed, 0, 0.5, 0.5, 0);
    ranks(weighed, 1, 0.5, 0.5, 0);
    ranks(weighed, 2, 0, 0, 1);
  }

  @Test
  void theSameSeedGivesTheSameSharesAndTheErrorIsThatOfSoManyDraws() {
    assertEquals(weigh(FIRST, Wishes.none()), weigh(FIRST, Wishes.none()));
    Weighed thousand =
        (Weighed)
            Weighing.of(alternatives(3), criteria(2, 0, 1), known(FIRST), Wishes.none(), 1, 10_000);
    // 1.96 root(1/4/10,000), by hand.
    assertEquals(0.0098, thousand.error(0.5), 1e-9);
    assertEquals(0, thousand.error(1));
  }

  @Test
  void anUnknownOutcomeIsItsWholeRange() {
    Criterion months = new Criterion("months", "Months", 36, 0);
    double[] unknown = Outcomes.unknown(months, N, 3);
    assertEquals(18, Arrays.stream(unknown).average().orElseThrow(), 4 * 36 / Math.sqrt(12.0 * N));
    Outcomes draws = Outcomes.of(List.of(List.of(unknown), List.of(new double[] {9})));
    Weighed weighed =
        (Weighed) Weighing.of(alternatives(2), List.of(months), draws, Wishes.none(), 3, N);
    ranks(weighed, 0, 0.25, 0.75);
    assertEquals(1, months.value(-3));
    assertEquals(0.75, months.value(9));
  }

  @Test
  void whatIsNoQuestionIsRefusedAtOnce() {
    assertThrows(IllegalArgumentException.class, () -> new Criterion("a", "A", 1, 1));
    assertThrows(
        IllegalArgumentException.class, () -> Outcomes.of(List.of(List.of(new double[0]))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            Weighing.of(
                alternatives(1), criteria(1, 0, 1), known(FIRST), Wishes.none(), 1, 10_000));
    assertThrows(
        IllegalArgumentException.class,
        () -> Weighing.of(alternatives(3), criteria(2, 0, 1), known(FIRST), Wishes.none(), 1, 10));
  }
}
