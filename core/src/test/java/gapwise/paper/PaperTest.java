package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Refused.Reason;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What opening a file answers, and that one page is read without the others. */
class PaperTest {
  @TempDir Path folder;

  private static Reason reason(Opening opening) {
    return assertInstanceOf(Refused.class, opening).reason();
  }

  @Test
  void aFileThatIsNotThereIsSaidToBeMissing() {
    assertEquals(Reason.MISSING, reason(Paper.open(folder.resolve("none.pdf"))));
    assertEquals(Reason.MISSING, reason(Paper.open(folder)));
  }

  @Test
  void aFileOfAnotherKindIsNoPdf() throws IOException {
    Path file = Files.writeString(folder.resolve("a.pdf"), "column;value\n1;2\n");
    assertEquals(Reason.NOT_A_PDF, reason(Paper.open(file)));
    assertEquals(
        Reason.NOT_A_PDF, reason(Paper.open(Files.write(folder.resolve("b.pdf"), new byte[0]))));
  }

  @Test
  void aFileCutOffIsDamaged() throws IOException {
    Path file =
        Files.write(
            folder.resolve("c.pdf"), "%PDF-1.7\n1 0 obj <<".getBytes(StandardCharsets.US_ASCII));
    assertEquals(Reason.DAMAGED, reason(Paper.open(file)));
  }

  @Test
  void aFileWithAPasswordIsLockedAndOneWithoutReadersPasswordIsRead() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.text(100, 100, 10, "secret");
      drawn
          .document()
          .protect(new StandardProtectionPolicy("owner", "reader", new AccessPermission()));
      assertEquals(Reason.LOCKED, reason(Paper.open(drawn.save(folder))));
    }
    try (Drawn drawn = new Drawn()) {
      drawn.text(100, 100, 10, "open");
      drawn.document().protect(new StandardProtectionPolicy("owner", "", new AccessPermission()));
      assertEquals("open", Drawn.pageOf(drawn.save(folder), 1).words().get(0).text());
    }
  }

  @Test
  void aFileAboveTheCapsIsRefusedWithTheCap() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.page(200, 200);
      drawn.page(200, 200);
      Path file = drawn.save(folder);
      assertEquals(
          Reason.TOO_MANY_BYTES, reason(Paper.open(file, Caps.STANDARD.withSize(100, 10))));
      assertEquals(
          Reason.TOO_MANY_PAGES, reason(Paper.open(file, Caps.STANDARD.withSize(10_000_000, 2))));
    }
  }

  @Test
  void aPageThatIsNotThereIsRefused() throws IOException {
    try (Drawn drawn = new Drawn()) {
      try (Paper paper = ((Opened) Paper.open(drawn.save(folder))).paper()) {
        assertEquals(Reason.NO_SUCH_PAGE, assertInstanceOf(Refused.class, paper.page(2)).reason());
        assertEquals(
            Reason.NO_SUCH_PAGE, assertInstanceOf(Refused.class, paper.picture(0, 50)).reason());
      }
    }
  }

  @Test
  void aClosedFileAnswersSo() throws IOException {
    try (Drawn drawn = new Drawn()) {
      Paper paper = ((Opened) Paper.open(drawn.save(folder))).paper();
      paper.close();
      paper.close();
      assertEquals(Reason.STOPPED, assertInstanceOf(Refused.class, paper.page(1)).reason());
    }
  }

  @Test
  void onePageOfALargeFileIsReadAlone() throws IOException {
    try (Drawn drawn = new Drawn()) {
      for (int i = 2; i <= 300; i++) {
        drawn.page(400, 500);
        for (int line = 0; line < 30; line++) {
          drawn.text(40, 40 + 14 * line, 9, "page " + i + " line " + line);
        }
      }
      Path file = drawn.save(folder);
      try (Paper paper = ((Opened) Paper.open(file)).paper()) {
        assertEquals(300, paper.pages());
        assertEquals(0, paper.pagesParsed());
        Page page = assertInstanceOf(Page.class, paper.page(250));
        assertEquals("page 250 line 0", page.lines().get(0).text());
        assertEquals(1, paper.pagesParsed());
        long packed = Files.size(file);
        assertTrue(
            paper.bytesTaken() < packed,
            paper.bytesTaken() + " of " + packed + " bytes were taken for one page");
      }
    }
  }
}
