package gapwise.synthesis.smallstudy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.testing.BcgTrials;
import gapwise.synthesis.testing.Pooling;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Bounds of Ioannidis and Trikalinos, CMAJ 2007;176:1091. */
class CautionsTest {
  private static List<String> codes(
      EffectSample effects, boolean errorFollowsEffect, SmallStudyTest... made) {
    return Cautions.of(
            new SmallStudyData(
                effects, Optional.empty(), errorFollowsEffect, 0, Pooling.commonEffect()),
            List.of(made))
        .stream()
        .map(caution -> caution.problem().code())
        .toList();
  }

  /** Twelve equal effects, the largest variance so many times the smallest. */
  private static EffectSample sizes(double ratio) {
    return EffectSample.of(
        IntStream.range(0, 12).mapToDouble(i -> 0.5).toArray(),
        IntStream.range(0, 12).mapToDouble(i -> i == 0 ? ratio : 1).toArray());
  }

  @Test
  void nothingIsSaidOfTestsThatWereNotMade() {
    assertEquals(List.of(), codes(sizes(1), true));
  }

  @Test
  void variancesUpToFourTimesTheSmallestAreOfOneSize() {
    assertEquals(List.of("studies-of-similar-size"), codes(sizes(4), false, new Egger()));
    assertEquals(List.of(), codes(sizes(4.001), false, new Egger()));
  }

  @Test
  void anErrorThatFollowsTheEffectIsNamedForTestsOfEffectsAgainstErrors() {
    assertEquals(List.of("standard-error-follows-effect"), codes(sizes(9), true, new Begg()));
    assertEquals(List.of(), codes(sizes(9), true, new Peters()));
  }

  @Test
  void heterogeneityOfHalfOrMoreIsNamed() {
    // I squared of the vaccine trials is 92 % (Q = 163 on 12: (163 - 12)/163).
    assertEquals(
        List.of("small-study-test-with-heterogeneity"),
        codes(BcgTrials.logOddsRatios(), false, new Egger()));
  }

  @Test
  void aTestOfFewerThanTenStudiesIsNotToBeRead() {
    // Sterne et al., BMJ 2011;343:d4002.
    assertEquals(
        List.of("too-few-for-small-study-test"),
        codes(sizes(9).at(IntStream.range(0, 9).boxed().toList()), false, new Egger()));
  }

  @Test
  void trimAndFillOfFewStudiesIsNotBelieved() {
    TrimAndFill fill = new TrimAndFill(TrimAndFill.Estimator.L0, TrimAndFill.Side.LEFT, false);
    assertEquals(
        List.of("too-few-for-small-study-test"),
        codes(sizes(9).at(IntStream.range(0, 9).boxed().toList()), false, fill));
  }
}
