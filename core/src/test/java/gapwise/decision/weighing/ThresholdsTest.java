package gapwise.decision.weighing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import gapwise.numeric.RandomValues;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Numbers by SciPy (norm, t, beta and quad), to the six digits printed, unless another is named.
 */
class ThresholdsTest {
  private static final double PRINTED = 5e-7;
  private static final Difference.Summary TWELVE = Difference.Summary.ofLimits(12, -2, 26);

  @Test
  void chancesOfADifferenceToldByItsLimits() {
    assertEquals(7.142988, TWELVE.standardError(), PRINTED);
    assertEquals(.610259, TWELVE.above(10), PRINTED);
    assertEquals(.953518, TWELVE.above(0), PRINTED);
    assertEquals(.001035, TWELVE.below(-10), PRINTED);
    assertEquals(.388706, TWELVE.within(10), PRINTED);
    assertEquals(.605558, TWELVE.withDegreesOfFreedom(6).above(10), PRINTED);
    assertEquals(0.5, TWELVE.above(TWELVE.flips()));
  }

  /** Mean 12, standard error 3.5, spread of centres 8, eight series. */
  @Test
  void chancesInAFurtherCentre() {
    Difference.Summary further = new Difference.Summary(12, 3.5, TWELVE.law()).inFurtherCentre(8);
    assertEquals(.590581, further.above(10), PRINTED);
    assertEquals(.586777, further.withDegreesOfFreedom(6).above(10), PRINTED);
  }

  @Test
  void drawsGiveTheSameAsTheirLaw() {
    RandomValues random = RandomValues.ofSeed(4);
    double[] draws = new double[100_000];
    Arrays.setAll(draws, i -> 12 + 7.142988 * random.normal());
    Difference drawn = Difference.Drawn.of(draws);
    assertEquals(.610259, drawn.above(10), 0.006);
    assertEquals(.388706, drawn.within(10), 0.006);
    assertEquals(12, drawn.flips(), 0.12);
    // By hand.
    Difference four = Difference.Drawn.of(new double[] {3, -1, 1, 2});
    assertEquals(0.5, four.above(1));
    assertEquals(0.25, four.below(1));
    assertEquals(0.5, four.within(1));
    assertEquals(1.5, four.flips());
  }

  /** 9 of 9 above 0.8: 1 - 0.8^10; 9 of 9 above 7 of 9: 17/19; both by hand. */
  @Test
  void chancesOfSharesFromCounts() {
    OneShare all = new OneShare(9, 9);
    assertEquals(1 - Math.pow(0.8, 10), all.above(0.8), 1e-12);
    assertEquals(.624190, new OneShare(8, 9).above(0.8), PRINTED);
    assertEquals(.322200, new OneShare(7, 9).above(0.8), PRINTED);
    OneShare seven = new OneShare(7, 9);
    assertEquals(17 / 19.0, all.above(seven, 0), 1e-12);
    assertEquals(.702343, all.above(seven, 0.1), PRINTED);
    OneShare many = new OneShare(23, 27);
    assertEquals(.532351, many.above(new OneShare(12, 14), 0), PRINTED);
    assertEquals(.223610, many.above(new OneShare(12, 14), 0.1), PRINTED);
    // One of two is the greater, also by less than nothing, and with thousands of patients.
    OneShare large = new OneShare(9_000, 10_000);
    assertEquals(1, all.above(large, -0.1) + large.above(all, 0.1), 1e-10);
    assertEquals(1, large.above(seven, 0.05) + seven.above(large, -0.05), 1e-10);
    assertEquals(0.5, all.above(all.flips()), 1e-9);
  }

  @Test
  void personsWhoGainMoreThanTheyWouldNotice() {
    PersonsWhoGain gain = new PersonsWhoGain(9, 15);
    assertEquals(.579260, gain.share(12), PRINTED);
    assertEquals(.473424, gain.share(8), PRINTED);
    // To the digits printed as so many of 100.
    assertEquals(10.5836, 100 * gain.more(12, 8), 5e-5);
  }

  @Test
  void whatIsNoThresholdIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> TWELVE.within(-1));
    assertThrows(IllegalArgumentException.class, () -> new OneShare(3, 2));
    assertThrows(
        IllegalArgumentException.class, () -> Difference.Drawn.of(new double[] {Double.NaN}));
    assertThrows(IllegalArgumentException.class, () -> new PersonsWhoGain(9, 0));
  }
}
