package gapwise.carried;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.ExtractionBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.extraction.Extraction;
import gapwise.extraction.Side;
import gapwise.extraction.TwiceRead;
import gapwise.screening.Reader;
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

/** A paper read twice goes into another base once nothing of it has to be hidden any more. */
class CarriedExtractionTest {
  private static final Instant NOW = Instant.parse("2031-02-03T04:05:06Z");
  private static final Reader AB = new Reader("AB");
  private static final Reader CD = new Reader("CD");
  private static final String STUDY = "marl-2031";

  @TempDir Path folder;

  private DocumentStore open(String name) {
    return DocumentStore.open(folder.resolve(name), Clock.systemUTC());
  }

  private static Extraction extraction(Reader reader, String title, Instant when) {
    Study study =
        Study.with(STUDY, Citation.with(title).build())
            .arms(List.of(Arm.with("A", MethodUsed.of(Method.of("autograft"))).build()))
            .build();
    return Extraction.of(study, reader, Optional.empty(), List.of(), when);
  }

  private static void handIn(ExtractionBase base, Extraction extraction) {
    assertTrue(base.handIn(base.find(STUDY).orElseThrow(), extraction, "extracted"));
  }

  private static String carried(DocumentStore store) throws IOException {
    StringWriter lines = new StringWriter();
    new CarriedLines(store).write(lines);
    return lines.toString();
  }

  @Test
  void whatWasHandedInLastIsFoundInTheOtherBase() throws IOException {
    Extraction last = extraction(AB, "Pegs of the moon", NOW.plusSeconds(5));
    String lines;
    try (DocumentStore from = open("from")) {
      ExtractionBase base = new ExtractionBase(from);
      TwiceRead paper =
          TwiceRead.opened(
              STUDY, Optional.empty(), "", AB, CD, Optional.empty(), new TwiceRead.Opened(CD, NOW));
      assertTrue(base.open(paper));
      assertFalse(base.open(paper), "one of this study is open");
      ExtractionBase.Kept seen = base.find(STUDY).orElseThrow();
      handIn(base, extraction(AB, "Pegs of the sun", NOW));
      assertFalse(base.handIn(seen, last, "from an older page"), "the paper has changed since");
      handIn(base, last);
      handIn(base, extraction(CD, "Pegs", NOW));
      assertEquals("", carried(from), "nothing before the settling has begun");
      ExtractionBase.Kept both = base.find(STUDY).orElseThrow();
      assertTrue(base.begin(both, new TwiceRead.Settling(CD, 0, NOW.plusSeconds(9))));
      lines = carried(from);
    }
    try (DocumentStore into = open("into")) {
      new CarriedLines(into)
          .read(new BufferedReader(new StringReader(lines)), "beside-studies.jsonl", "EF", "moved");
      ExtractionBase base = new ExtractionBase(into);
      TwiceRead paper = base.find(STUDY).orElseThrow().paper();
      assertEquals(Optional.of(last), base.extraction(paper, Side.FIRST));
      assertEquals(TwiceRead.Stage.BEING_SETTLED, paper.stage());
    }
  }
}
