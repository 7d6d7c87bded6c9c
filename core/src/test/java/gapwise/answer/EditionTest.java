package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** What a figure says of the state that it was made from. */
class EditionTest {
  @Test
  void theDayIsToldWithTheNumberThatFindsTheStateAgain() {
    Edition edition =
        new Edition("1.0", OptionalLong.of(67), Optional.of(LocalDate.of(2031, 2, 3)));
    assertEquals(
        "Gapwise 1.0, evidence base last changed on 2031-02-03, at change 67", edition.words());
    assertEquals(
        "Gapwise 1.0, evidence base last changed on 2031-02-03, at change 67, data 0123456789ab",
        edition.words("0123456789abcdef"));
  }

  @Test
  void whatHasNoDayOrNoBaseIsToldWithoutIt() {
    assertEquals(
        "Gapwise 1.0, evidence base at change 0",
        new Edition("1.0", OptionalLong.of(0), Optional.empty()).words());
    assertEquals("Gapwise 1.0", Edition.ofProgram("1.0").words());
  }
}
