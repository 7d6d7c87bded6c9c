package gapwise.synthesis.smallstudy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.smallstudy.TrimAndFill.Estimator;
import gapwise.synthesis.smallstudy.TrimAndFill.Side;
import gapwise.synthesis.testing.Pooling;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TrimAndFillTest {
  private static AsymmetryFinding find(Estimator estimator, Side side, double... effects) {
    double[] variances = new double[effects.length];
    Arrays.fill(variances, 1);
    return find(new TrimAndFill(estimator, side, false), EffectSample.of(effects, variances));
  }

  private static AsymmetryFinding find(Estimator estimator, EffectSample sample) {
    return find(new TrimAndFill(estimator, Side.LEFT, false), sample);
  }

  private static AsymmetryFinding find(TrimAndFill test, EffectSample sample) {
    return test.find(
        new SmallStudyData(sample, Optional.empty(), false, 0, Pooling.commonEffect()));
  }

  private static AsymmetryFinding.Filled filled(Estimator estimator, Side side, double... effects) {
    return assertInstanceOf(AsymmetryFinding.Filled.class, find(estimator, side, effects));
  }

  @ParameterizedTest
  @EnumSource
  void anEvenFunnelIsLeftAsItIs(Estimator estimator) {
    AsymmetryFinding.Filled found = filled(estimator, Side.LEFT, -3, -2, -1, 0, 1, 2, 3);
    assertEquals(0, found.filled().size());
    assertEquals(0, found.mean().estimate(), 1e-14);
  }

  @ParameterizedTest
  @EnumSource
  void studiesOnOneSideAreMirroredAboutTheMiddleOfTheRest(Estimator estimator) {
    // Even but for 20 and 30. First middle 50/9. Above it lie 20 and 30 with the two longest
    // distances of nine: L0 = (4 x 17 - 90)/17 < 0, but R0 = 2 - 1 = 1.
    AsymmetryFinding.Filled found = filled(estimator, Side.LEFT, -3, -2, -1, 0, 1, 2, 3, 20, 30);
    if (estimator == Estimator.L0) {
      assertEquals(0, found.filled().size());
    } else {
      // Without 30 the middle is 20/8 = 2.5: of distances the longest is 20's 17.5, then -3's 5.5,
      // and of all nine 30's is longest: again 2 - 1, so one study stays imagined, at 5 - 30.
      assertEquals(1, found.filled().size());
      assertEquals(-25, found.filled().get(0).effect(), 1e-13);
      assertEquals(8, found.filled().get(0).mirrors());
      assertEquals(1, found.filled().get(0).variance());
      assertEquals(2.5, found.mean().estimate(), 1e-13);
    }
  }

  @Test
  void byL0CountsTheRankSumOnTheFullSide() {
    // One study so exact that it is the middle, 0, whatever is trimmed; 1 to 4 lie on the full side
    // with ranks 2 to 5 of 5. T = 14: (4 x 14 - 30)/9 = 2.9, so three, the farthest first.
    AsymmetryFinding.Filled found =
        assertInstanceOf(
            AsymmetryFinding.Filled.class,
            find(
                Estimator.L0,
                EffectSample.of(
                    new double[] {3, 0, 1, 4, 2}, new double[] {1e6, 1e-6, 1e6, 1e6, 1e6})));
    assertEquals(3, found.filled().size());
    assertEquals(
        List.of(3, 0, 4), found.filled().stream().map(AsymmetryFinding.Imagined::mirrors).toList());
    assertEquals(-4, found.filled().get(0).effect(), 1e-9);
    assertTrue(found.settled());
  }

  @Test
  void byL0AHeapOnOneSideIsNotOutweighedByFewFarOnes() {
    // Middle 2.1. Full side 0.9, 1.9, 2.9, 3.9 with ranks 2, 4, 9, 10 among 0.1, 1.1 and four times
    // 2.1. T = 25: (100 - 110)/19, so none.
    assertEquals(0, filled(Estimator.L0, Side.LEFT, 0, 0, 0, 0, 1, 2, 3, 4, 5, 6).filled().size());
  }

  @Test
  void turnsRoundWithTheSide() {
    AsymmetryFinding.Filled left = filled(Estimator.R0, Side.LEFT, -3, -2, -1, 0, 1, 2, 3, 20, 30);
    AsymmetryFinding.Filled right =
        filled(Estimator.R0, Side.RIGHT, 3, 2, 1, 0, -1, -2, -3, -20, -30);
    assertEquals(left.filled().size(), right.filled().size());
    assertEquals(-left.mean().estimate(), right.mean().estimate(), 1e-13);
  }

  @Test
  void imaginesNothingOnTheSideThatIsFull() {
    assertEquals(
        0, filled(Estimator.R0, Side.RIGHT, -3, -2, -1, 0, 1, 2, 3, 20, 30).filled().size());
  }

  @Test
  void saysThatImaginedStudiesAreNoData() {
    assertTrue(
        filled(Estimator.R0, Side.LEFT, -3, -2, -1, 0, 1, 2, 3, 20, 30)
            .sentence()
            .contains("Imagined studies are no data"));
  }

  @Test
  void needsThreeStudies() {
    assertEquals(
        "too-few-studies",
        assertInstanceOf(AsymmetryFinding.Refused.class, find(Estimator.L0, Side.LEFT, 1, 2))
            .why()
            .code());
  }
}
