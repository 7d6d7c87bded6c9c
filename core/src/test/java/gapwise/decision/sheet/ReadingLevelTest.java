package gapwise.decision.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Coefficients as printed by a comparison of formulas (PMC5849699, table 1); the counts and grades
 * of the ten sentences worked out apart from the program.
 */
class ReadingLevelTest {
  private static final String TEN =
      "Part of your shin bone is missing. There are five ways to treat this. One way uses a metal"
          + " frame around the leg. You turn a small screw four times each day. The frame stays on"
          + " for about ten months. Infection can come back. Another operation may be needed."
          + " Nobody can promise the result. Ask us what matters to you. You can take this sheet"
          + " home.";

  @Test
  void tenSentencesHaveTheCountsAndGradesThatWereWorkedOutByHand() {
    ReadingLevel level = ReadingLevel.of(TEN, Syllables.listed());
    assertEquals(new ReadingLevel(66, 10, 84, 4), level);
    assertEquals(2.002182, level.kincaid(), 5e-7);
    assertEquals(6.742158, level.smog(), 5e-7);
  }

  @Test
  void thirteenWordsOfTwentyFourSyllablesAreOfTheGradeThatIsPrinted() {
    // 11.3 in print; six decimals worked out apart from the program.
    assertEquals(11.264615, new ReadingLevel(13, 1, 24, 3).kincaid(), 5e-7);
  }

  @Test
  void aNumberIsOneWordOfOneSyllable() {
    assertEquals(
        new ReadingLevel(4, 1, 4, 0), ReadingLevel.of("88 of 100 joined.", Syllables.listed()));
  }

  @Test
  void aWordThatIsNotListedIsRefusedByName() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> ReadingLevel.of("The osteotomy heals.", Syllables.listed()));
    assertTrue(refused.getMessage().contains("osteotomy"), refused.getMessage());
  }
}
