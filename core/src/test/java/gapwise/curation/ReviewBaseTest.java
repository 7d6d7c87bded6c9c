package gapwise.curation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Design;
import gapwise.review.Duty;
import gapwise.review.Review;
import gapwise.review.ReviewLimits;
import gapwise.review.ReviewOutcome;
import gapwise.review.ReviewPerson;
import gapwise.review.ReviewVersion;
import gapwise.review.WorkSoFar;
import gapwise.review.kept.Digest;
import gapwise.review.kept.DigestNumber;
import gapwise.review.kept.DigestStudy;
import gapwise.review.kept.EvidenceState;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.KeptVersion;
import gapwise.screening.Reader;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A review and kept questions in a store, read again as they were written. */
class ReviewBaseTest {
  private static final WorkSoFar NONE = new WorkSoFar(0, 0, 0);
  private static final Review FULL =
      new Review(
          "Gaps",
          "register 12",
          "Adults",
          List.of("bone-transport"),
          List.of("autograft"),
          List.of(
              new ReviewOutcome("union", OptionalDouble.of(10), "one year"),
              new ReviewOutcome("infection-recurrence", OptionalDouble.empty(), "")),
          List.of("adults"),
          List.of("tumours"),
          new ReviewLimits(
              List.of(Design.RANDOMISED),
              OptionalDouble.of(2.5),
              OptionalDouble.empty(),
              OptionalInt.of(1990),
              OptionalInt.empty(),
              "any"),
          List.of(new ReviewPerson(new Reader("AB"), List.of(Duty.SCREENS, Duty.READS))));

  @TempDir Path folder;
  private DocumentStore store;

  @BeforeEach
  void open() {
    store = DocumentStore.open(folder, Clock.systemUTC());
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aReviewIsReadAsItWasWrittenAndEveryVersionStays() {
    ReviewBase base = new ReviewBase(store);
    assertEquals(Optional.empty(), base.latest());
    assertTrue(base.keep(Review.EMPTY, NONE, "AB", "to begin with", 0));
    assertTrue(base.keep(FULL, new WorkSoFar(2, 0, 1), "CD", "agreed", 1));
    ReviewVersion latest = base.latest().orElseThrow();
    assertEquals(FULL, latest.review());
    assertEquals(new WorkSoFar(2, 0, 1), latest.work());
    assertEquals(
        List.of(Review.EMPTY, FULL), base.history().stream().map(ReviewVersion::review).toList());
  }

  @Test
  void aVersionThatAnotherOvertookIsNotKept() {
    ReviewBase base = new ReviewBase(store);
    assertTrue(base.keep(FULL, NONE, "AB", "first", 0));
    assertFalse(base.keep(Review.EMPTY, NONE, "CD", "first too", 0));
    assertEquals(FULL, base.latest().orElseThrow().review());
  }

  @Test
  void aQuestionIsKeptTakenAnewAndLetGo() {
    KeptQuestionBase base = new KeptQuestionBase(store);
    Digest then =
        new Digest(
            new EvidenceState(3, Optional.of(Instant.parse("2031-02-03T04:05:06Z")), "1"),
            List.of(new DigestStudy("one", "Aster 2001", 1, "aa")),
            List.of(new DigestNumber("All series", "", "10 patients", "1 series")));
    Digest empty = new Digest(new EvidenceState(0, Optional.empty(), ""), List.of(), List.of());
    KeptQuestion question = new KeptQuestion("00aa00aa00aa", "Union", "/pooled", "", then);
    assertTrue(base.keep(question, "AB", "kept", 0));
    assertFalse(base.keep(question, "CD", "kept", 0));
    assertTrue(base.keep(question.with(empty), "CD", "nothing is left", 1));
    KeptVersion now = base.find("00aa00aa00aa").orElseThrow();
    assertEquals(question.with(empty), now.question());
    assertEquals(2, now.version());
    assertEquals(question, base.history("00aa00aa00aa").get(0).question());
    assertFalse(base.drop("00aa00aa00aa", "AB", "not needed", 1));
    assertTrue(base.drop("00aa00aa00aa", "AB", "not needed", 2));
    assertEquals(List.of(), base.all());
    assertEquals(2, base.history("00aa00aa00aa").size());
  }
}
