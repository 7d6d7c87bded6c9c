package gapwise.place;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShareWordsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.21 | earlier than about 8 in 10 new series of X would be expected to report",
        "0.44 | earlier than about 6 in 10 new series of X would be expected to report",
        "0.06 | earlier than about 9 in 10 new series of X would be expected to report",
        "0.51 | about the middle of what new series of X would be expected to report",
        "0.73 | later than about 7 in 10 new series of X would be expected to report",
        "0.04 | earlier than nearly all new series of X would be expected to report: fewer than 1"
            + " in 20 would report as early a time",
        "1 | later than nearly all new series of X would be expected to report: fewer than 1 in 20"
            + " would report as late a time"
      })
  void aShareIsRoundedToTenthsAndNeverSaidToBeAllOrNone(double below, String words) {
    assertEquals(words, ShareWords.stands(below, Milestone.FULL, "X"));
  }

  @ParameterizedTest
  @CsvSource({"FRAME_OFF, shorter", "COST, lower", "UNION, earlier", "END, shorter"})
  void eachMilestoneHasItsOwnWordForLess(Milestone milestone, String word) {
    String words = ShareWords.stands(0.2, milestone, "X");
    assertEquals(word + " than about 8 in 10", words.substring(0, word.length() + 19));
  }
}
