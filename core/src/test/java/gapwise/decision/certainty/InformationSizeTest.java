package gapwise.decision.certainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/**
 * The optimal information size. The formula is that of sample sizes for two groups; a chart of 2011
 * (Guyatt et al., J Clin Epidemiol 2011;64:1283, as quoted) shows about 2,000 for 20 against 15 of
 * 100, and 400 in all for a difference of 0.2 standard deviations, which is one group here.
 */
class InformationSizeTest {
  @Test
  void ofTwoSharesItIsThatOfATrialOfTwoGroups() {
    assertEquals(903, InformationSize.ofShares(0.20, 0.15));
    assertEquals(1445, InformationSize.ofShares(0.20, 0.16));
    assertEquals(432, InformationSize.ofShares(0.10, 0.05));
    assertEquals(197, InformationSize.ofShares(0.80, 0.90));
  }

  @Test
  void ofTwoMeansItGoesWithTheirDifferenceInStandardDeviations() {
    assertEquals(393, InformationSize.ofMeans(0.2));
    assertEquals(63, InformationSize.ofMeans(0.5));
  }

  @Test
  void ofOneGroupItIsReachedWhereTheIntervalIsSoNarrow() {
    assertEquals(196, InformationSize.ofOneShare(0.85, 0.05));
  }

  @Test
  void whatNoStudyCanFindIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> InformationSize.ofShares(0.2, 0.2));
    assertThrows(IllegalArgumentException.class, () -> InformationSize.ofShares(0, 0.2));
    assertThrows(IllegalArgumentException.class, () -> InformationSize.ofMeans(0));
    assertThrows(IllegalArgumentException.class, () -> InformationSize.ofOneShare(0.5, 0));
  }
}
