package gapwise.review.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What moves between two answers; all of it is invented. */
class MovedTest {
  private static final EvidenceState THEN = new EvidenceState(4, Optional.of(Instant.EPOCH), "1");
  private static final EvidenceState NOW = new EvidenceState(7, Optional.of(Instant.EPOCH), "1");
  private static final DigestStudy ONE = new DigestStudy("one", "Aster 2001", 1, "aa");
  private static final DigestNumber UNION =
      new DigestNumber("Bone transport", "90 (82 to 94)", "9 of 10", "1 series");

  private static Moved moved(List<DigestStudy> studies, List<DigestNumber> numbers) {
    return Moved.between(
        new Digest(THEN, List.of(ONE), List.of(UNION)), new Digest(NOW, studies, numbers));
  }

  @Test
  void theSameStudiesAndNumbersAreAsItWasInWhateverVersionAndState() {
    Moved same = moved(List.of(new DigestStudy("one", "Aster 2001", 5, "aa")), List.of(UNION));
    assertEquals(Moved.Mark.AS_IT_WAS, same.mark());
  }

  @Test
  void aStudyThatChangedWithoutMovingANumberIsMarkedAsSuch() {
    Moved changed = moved(List.of(new DigestStudy("one", "Aster 2001", 2, "bb")), List.of(UNION));
    assertEquals(Moved.Mark.STUDIES_CHANGED, changed.mark());
    assertEquals(ONE, changed.changed().get(0).before());
  }

  @Test
  void studiesThatCameAndWentAreNamed() {
    DigestStudy two = new DigestStudy("two", "Briar 2002", 1, "cc");
    Moved moved = moved(List.of(two), List.of(UNION));
    assertEquals(List.of(two), moved.came());
    assertEquals(List.of(ONE), moved.went());
    assertEquals(Moved.Mark.STUDIES_CHANGED, moved.mark());
  }

  @Test
  void aNumberThatComesGoesOrSaysSomethingElseMoved() {
    DigestNumber other = new DigestNumber("Bone transport", "91 (82 to 95)", "9 of 10", "1 series");
    Moved said = moved(List.of(ONE), List.of(other));
    assertEquals(Moved.Mark.NUMBERS_MOVED, said.mark());
    assertEquals(
        List.of(new Moved.MovedNumber("Bone transport", Optional.of(UNION), Optional.of(other))),
        said.numbers());
    assertEquals(Optional.empty(), moved(List.of(ONE), List.of()).numbers().get(0).after());
  }

  @Test
  void numbersOfOneNameAreToldApart() {
    List<DigestNumber> named = DigestNumber.named(List.of(UNION, UNION));
    assertEquals("Bone transport (2)", named.get(1).name());
    assertThrows(
        IllegalArgumentException.class, () -> new Digest(THEN, List.of(), List.of(UNION, UNION)));
  }
}
