package gapwise.decision.cost;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Closed forms and sums of geometric series, to the six decimals printed. */
class ChainTest {
  private static final double PRINTED = 5e-7;

  private static Trace dying(int cycles) {
    double[][] chances = {{0.9, 0.1}, {0, 1}};
    return new Chain(List.of("alive", "dead"), new double[] {1, 0}, cycle -> chances, cycles).run();
  }

  private static double lived(int cycles, double rate, Counting counting) {
    return dying(cycles)
        .total((time, state) -> state == 0 ? 1 : 0, new Discount(rate, 1), counting);
  }

  @Test
  void yearsOfACohortOfWhichATenthDiesEachYear() {
    assertEquals(7.905810, lived(20, 0, Counting.END), PRINTED);
    assertEquals(8.784233, lived(20, 0, Counting.START), PRINTED);
    assertEquals(8.345022, lived(20, 0, Counting.TRAPEZOID), PRINTED);
    assertEquals(8.337316, lived(20, 0, Counting.SIMPSON), PRINTED);
    // The integral of 0.9^t from 0 to 20, which Simpson's rule comes near.
    double integral = (1 - Math.pow(0.9, 20)) / -Math.log(0.9);
    assertEquals(8.337311, integral, PRINTED);
    assertEquals(integral, lived(20, 0, Counting.SIMPSON), 1e-5);
    double to19 = (1 - Math.pow(0.9, 19)) / -Math.log(0.9);
    assertEquals(to19, lived(19, 0, Counting.SIMPSON), 2e-5);
    assertEquals(0.95, lived(1, 0, Counting.SIMPSON), 1e-12);
  }

  @Test
  void theSameDiscounted() {
    assertEquals(6.457057, lived(20, 0.03, Counting.END), PRINTED);
    assertEquals(7.389743, lived(20, 0.03, Counting.START), PRINTED);
    assertEquals(6.923400, lived(20, 0.03, Counting.TRAPEZOID), PRINTED);
  }

  /**
   * Two other customs for the half cycle, which differ from the trapezoid only by what is
   * discounted: the mean of both ends discounted to the end of its cycle, or to its middle.
   */
  @Test
  void otherCustomsForTheHalfCycle() {
    Trace trace = dying(20);
    Discount discount = new Discount(0.03, 1);
    double toTheEnd = 0;
    double toTheMiddle = 0;
    for (int year = 1; year <= 20; year++) {
      double mean = (trace.share(year - 1, 0) + trace.share(year, 0)) / 2;
      toTheEnd += mean * discount.factor(year);
      toTheMiddle += mean * discount.factor(year - 0.5);
    }
    assertEquals(6.815782, toTheEnd, PRINTED);
    assertEquals(6.917263, toTheMiddle, PRINTED);
  }

  /** Endless sums: q/(1 - q) from year 1 on, 1/(1 - q) from year 0, q = 0.9 over 1 + r. */
  @Test
  void aLongHorizonComesToTheEndlessSum() {
    assertEquals(9, lived(2_000, 0, Counting.END), 1e-9);
    assertEquals(10, lived(2_000, 0, Counting.START), 1e-9);
    assertEquals(9.5, lived(2_000, 0, Counting.TRAPEZOID), 1e-9);
    assertEquals(6.923077, lived(2_000, 0.03, Counting.END), PRINTED);
    assertEquals(7.923077, lived(2_000, 0.03, Counting.START), PRINTED);
  }

  @Test
  void discountedSeries() {
    Discount discount = new Discount(0.03, 1);
    double renewed = 0;
    for (int year = 0; year < 30; year += 3) {
      renewed += 10_000 * discount.factor(year);
    }
    assertEquals(69_293.511516, renewed, PRINTED);
    Trace living =
        new Chain(List.of("alive"), new double[] {1}, cycle -> new double[][] {{1}}, 30).run();
    assertEquals(
        19_600.441349, living.total((time, state) -> 1_000, discount, Counting.END), PRINTED);
    assertEquals(discount.factor(2), new Discount(0.03, 12).factor(24), 1e-15);
  }

  @Test
  void chancesOfRatesAndMonths() {
    assertEquals(.023688, Chances.ofMonth(.25), PRINTED);
    assertEquals(1, Chances.ofMonth(1));
    double[] competing = Chances.competing(new double[] {.03, .01}, 12);
    assertEquals(.285912, competing[0], PRINTED);
    assertEquals(.095304, competing[1], PRINTED);
    assertArrayEquals(new double[2], Chances.competing(new double[2], 12));
    assertEquals(1 - Math.exp(-0.6), Chances.ofRate(0.05, 12), 1e-15);
  }

  @Test
  void chancesMayChangeFromCycleToCycleAndSharesAddUpToOne() {
    Trace trace =
        new Chain(
                List.of("a", "b", "c"),
                new double[] {0.5, 0.5, 0},
                cycle ->
                    cycle == 1
                        ? new double[][] {{0, 1, 0}, {0.2, 0.3, 0.5}, {0, 0, 1}}
                        : new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
                4)
            .run();
    // By hand: a gets 0.2 of b, b keeps 0.3 and gets all of a, c gets half of b.
    assertEquals(0.1, trace.share(4, 0), 1e-15);
    assertEquals(0.65, trace.share(4, 1), 1e-15);
    assertEquals(0.25, trace.share(4, 2), 1e-15);
    assertEquals(0.25, trace.entered(1, 2), 1e-15);
    assertEquals(0.5, trace.moved(1, 0, 1), 1e-15);
    assertEquals(0, trace.entered(2, 2));
  }

  @Test
  void whoeverEntersAnAbsorbingStateStaysThere() {
    Trace trace = dying(20);
    double entered = 0;
    for (int cycle = 1; cycle <= 20; cycle++) {
      entered += trace.entered(cycle, 1);
      assertEquals(entered, trace.share(cycle, 1), 1e-12);
      assertEquals(1, trace.share(cycle, 0) + trace.share(cycle, 1), 1e-12);
    }
    assertEquals(1 - Math.pow(0.9, 20), entered, 1e-12);
  }

  @Test
  void chancesThatDoNotAddUpAreRefused() {
    Chain chain =
        new Chain(
            List.of("a", "b"),
            new double[] {1, 0},
            cycle -> new double[][] {{0.9, 0.2}, {0, 1}},
            1);
    assertThrows(IllegalArgumentException.class, chain::run);
    assertThrows(
        IllegalArgumentException.class,
        () -> new Chain(List.of("a"), new double[] {0.9}, cycle -> new double[1][1], 1));
  }
}
