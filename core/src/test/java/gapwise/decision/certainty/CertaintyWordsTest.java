package gapwise.decision.certainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.decision.certainty.CertaintyWords.Size;
import org.junit.jupiter.api.Test;

/** One qualifier, from its own level; at very low neither size nor direction. */
class CertaintyWordsTest {
  @Test
  void aRateIsSaidByItsLevel() {
    assertEquals("about 85 of 100 united", CertaintyWords.rate(Level.HIGH, "85 of 100", "united"));
    assertEquals(
        "probably about 85 of 100 united",
        CertaintyWords.rate(Level.MODERATE, "85 of 100", "united"));
    assertEquals(
        "perhaps 85 of 100 united, maybe quite different",
        CertaintyWords.rate(Level.LOW, "85 of 100", "united"));
    assertEquals(
        "reported: 12 of 14 united; this says little about you",
        CertaintyWords.rate(Level.VERY_LOW, "12 of 14", "united"));
  }

  @Test
  void theSizeOfADifferenceGoesWithWhatMatters() {
    assertEquals(Size.LITTLE_OR_NONE, Size.of(0.09, 0.1));
    assertEquals(Size.SMALL, Size.of(-0.1, 0.1));
    assertEquals(Size.SMALL, Size.of(0.2, 0.1));
    assertEquals(Size.MODERATE, Size.of(0.3, 0.1));
    assertEquals(Size.LARGE, Size.of(0.4, 0.1));
  }

  @Test
  void aDifferenceIsSaidByItsLevelAndSize() {
    assertEquals("many more join", CertaintyWords.difference(Level.HIGH, Size.LARGE, true, "join"));
    assertEquals(
        "probably slightly fewer join",
        CertaintyWords.difference(Level.MODERATE, Size.SMALL, false, "join"));
    assertEquals(
        "there may be about as many that join",
        CertaintyWords.difference(Level.LOW, Size.LITTLE_OR_NONE, true, "join"));
    for (Size size : Size.values()) {
      assertEquals("we do not know", CertaintyWords.difference(Level.VERY_LOW, size, true, "join"));
    }
  }
}
