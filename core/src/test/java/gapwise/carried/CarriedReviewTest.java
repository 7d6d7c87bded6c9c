package gapwise.carried;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.KeptQuestionBase;
import gapwise.curation.ReviewBase;
import gapwise.review.Review;
import gapwise.review.WorkSoFar;
import gapwise.review.kept.Digest;
import gapwise.review.kept.EvidenceState;
import gapwise.review.kept.KeptQuestion;
import gapwise.store.DocumentStore;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A review and its kept questions go into another base with the studies. */
class CarriedReviewTest {
  private static final Instant NOW = Instant.parse("2031-02-03T04:05:06Z");

  @TempDir Path folder;

  private static KeptQuestion question(Instant when) {
    return new KeptQuestion(
        "00aa00aa00aa",
        "Union",
        "/pooled",
        "outcome=union",
        new Digest(new EvidenceState(3, Optional.of(when), "1"), List.of(), List.of()));
  }

  private static long read(DocumentStore store, String text) {
    return new CarriedLines(store)
        .read(new BufferedReader(new StringReader(text)), "beside.jsonl", "EF", "moved");
  }

  @Test
  void theLaterAnswerToAQuestionStays() throws IOException {
    StringWriter lines = new StringWriter();
    try (DocumentStore from = DocumentStore.open(folder.resolve("from"), Clock.systemUTC())) {
      new ReviewBase(from).keep(Review.EMPTY, new WorkSoFar(0, 0, 0), "AB", "begun", 0);
      new KeptQuestionBase(from).keep(question(NOW), "AB", "kept", 0);
      assertEquals(2, new CarriedLines(from).write(lines));
    }
    try (DocumentStore into = DocumentStore.open(folder.resolve("into"), Clock.systemUTC())) {
      assertEquals(2, read(into, lines.toString()));
      assertEquals(0, read(into, lines.toString()));
      assertTrue(new ReviewBase(into).latest().isPresent());
      KeptQuestionBase kept = new KeptQuestionBase(into);
      assertTrue(kept.keep(question(NOW.plusSeconds(5)), "CD", "taken anew", 1));
      assertEquals(0, read(into, lines.toString()), "the answer that stands is a later one");
      assertEquals(
          question(NOW.plusSeconds(5)), kept.find("00aa00aa00aa").orElseThrow().question());
    }
  }
}
