package gapwise.paper.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import gapwise.paper.Caps;
import gapwise.paper.Drawn;
import gapwise.paper.Guard;
import gapwise.paper.Outcome;
import gapwise.paper.Page;
import gapwise.paper.Reply;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A page read here is the page that another process gets. */
class PaperFileTest {
  @TempDir Path folder;

  @Test
  void aPageIsTheSameOnBothSides() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.text(100, 100, 10, "Überbrückt ± 7 “so”");
      drawn.upwards(40, 300, 8, "Share");
      drawn.line(60, 86, 290, 86);
      Path file = drawn.save(folder);
      Guard guard = new Guard(Caps.STANDARD);
      Outcome<PaperFile> opened = PaperFile.open(file, guard);
      try (PaperFile here = (PaperFile) assertInstanceOf(Outcome.Done.class, opened).value()) {
        Page read = (Page) assertInstanceOf(Outcome.Done.class, here.page(1, guard)).value();
        assertEquals(read, Reply.read(Reply.of(read, 0).frame()).page().orElseThrow());
        assertEquals(read, Drawn.pageOf(file, 1));
      }
    }
  }
}
