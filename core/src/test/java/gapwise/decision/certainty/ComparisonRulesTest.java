package gapwise.decision.certainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.decision.certainty.SeriesSeen.Concern;
import gapwise.figure.value.Limits;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * How far numbers of a comparison lower and raise certainty, on judgements published with the
 * numbers that they rest on.
 */
class ComparisonRulesTest {
  private static int imprecision(double lower, double upper, double matters) {
    return ComparisonRules.imprecision(new Limits(lower, upper), matters, false, 0, 1);
  }

  /** The stroke example of Guyatt et al., J Clin Epidemiol 2011;64:1283, as quoted: 1.3 % fewer. */
  @Test
  void theSameIntervalIsPreciseForOneThresholdAndNotForAnother() {
    assertEquals(0, imprecision(0.6, 2.0, 0.5));
    assertEquals(1, imprecision(0.6, 2.0, 1));
  }

  /** PMC3278052, table 16: 43 of 1000 against 6, 1 to 52; published: lowered by one. */
  @Test
  void anIntervalFromManyFewerToAFewMoreLowersOnce() {
    assertEquals(1, imprecision(1 - 43, 52 - 43, 10));
  }

  /**
   * A review of vitamin K in Blood Advances: 30 of 1000, from 11 fewer to 44 more; lowered by one.
   */
  @Test
  void anIntervalWithHarmButNoGainThatMattersLowersOnce() {
    assertEquals(1, imprecision(-11, 44, 20));
  }

  /** Guideline NG208, review J, table 5: ratio 0.49, 0.09 to 2.53, of one small study; by two. */
  @Test
  void aRatioOverBothLimitsLowersTwice() {
    assertEquals(2, ComparisonRules.imprecisionOfRatio(new Limits(0.09, 2.53), 0.8, 1.25));
    assertEquals(0, ComparisonRules.imprecisionOfRatio(new Limits(1.85, 9.68), 0.8, 1.25));
  }

  @Test
  void aLargeEffectFromFewPatientsLowersThoughItsIntervalCrossesNothing() {
    Limits difference = new Limits(0.12, 0.60);
    assertEquals(2, ComparisonRules.imprecision(difference, 0.1, true, 60, 394));
    assertEquals(1, ComparisonRules.imprecision(difference, 0.1, true, 250, 394));
    assertEquals(0, ComparisonRules.imprecision(difference, 0.1, true, 394, 394));
    assertEquals(0, ComparisonRules.imprecision(difference, 0.1, false, 60, 394));
  }

  /** Numbers of eight studies worked out in Python: average 12, standard error 3.5, tau 8. */
  @Test
  void aLineThatOnlyAFurtherStudyMayCrossLowersOnce() {
    Limits average = new Limits(5.140126, 18.859874);
    Limits further = new Limits(-9.366739, 33.366739);
    List<SeriesSeen> values = List.of(seen(0.3, -4), seen(0.7, 15));
    assertEquals(1, ComparisonRules.inconsistency(average, further, List.of(0.0), values));
    assertEquals(0, ComparisonRules.inconsistency(average, further, List.of(10.0), values));
    assertEquals(
        0,
        ComparisonRules.inconsistency(
            average, further, List.of(0.0), List.of(seen(0.1, -4), seen(0.9, 15))));
  }

  private static SeriesSeen seen(double share, double value) {
    return new SeriesSeen(share, Concern.LOW, OptionalDouble.of(value), 20, false);
  }

  /**
   * Warfarin in valve patients, a ratio of risks of 0.17, was raised by two, helmets, odds 0.31, by
   * one (Guyatt et al., BMJ 2008, from memory; limits and numbers of studies are ours).
   */
  @Test
  void aLargeEffectRaisesByOneAndAVeryLargeOneByTwo() {
    assertEquals(2, ComparisonRules.raisedByEffect(0.17, new Limits(0.1, 0.3), 3, false));
    assertEquals(1, ComparisonRules.raisedByEffect(0.31, new Limits(0.26, 0.37), 5, false));
    assertEquals(0, ComparisonRules.raisedByEffect(1.24, new Limits(1.1, 1.39), 28, false));
    assertEquals(0, ComparisonRules.raisedByEffect(4.24, new Limits(1.2, 9.68), 4, false));
    assertEquals(0, ComparisonRules.raisedByEffect(0.17, new Limits(0.1, 0.3), 3, true));
    assertEquals(0, ComparisonRules.raisedByEffect(0.17, new Limits(0.1, 0.3), 1, false));
  }

  /** Int J Pediatr 2014:468538: odds 2.41 at 112 of 1000 are 121 more of 1000. */
  @Test
  void aRatioOfOddsIsReadAsOneOfRisksAtARisk() {
    double ratio = ComparisonRules.riskRatio(2.41, 0.112);
    assertEquals(2.081318, ratio, 1e-6);
    assertEquals(121.1076, 1000 * 0.112 * (ratio - 1), 1e-4);
  }
}
