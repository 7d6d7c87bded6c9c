package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import gapwise.paper.Refused.Reason;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.io.TempDir;

/** Reads files made to hurt their reader. */
abstract class HostileFiles {
  /** Well above the caps of these tests, so that only a reader that hangs passes it. */
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  static final Caps CAPS = Caps.STANDARD.withMilliseconds(4_000);

  @TempDir Path folder;

  Path save(PDDocument document) throws IOException {
    Path file = folder.resolve("hostile-" + System.nanoTime() + ".pdf");
    document.save(file.toFile());
    document.close();
    return file;
  }

  static Object page(Path file) {
    return assertTimeoutPreemptively(
        PATIENCE,
        () -> {
          Opening opening = Paper.open(file, CAPS);
          if (!(opening instanceof Opened opened)) {
            return opening;
          }
          try (Paper paper = opened.paper()) {
            return paper.page(1);
          }
        });
  }

  static Reason reason(Object answer) {
    return assertInstanceOf(Refused.class, answer).reason();
  }

  static Object picture(Path file) {
    return assertTimeoutPreemptively(
        PATIENCE,
        () -> {
          try (Paper paper = ((Opened) Paper.open(file, CAPS)).paper()) {
            return paper.picture(1, 300);
          }
        });
  }

  /** A plain file written by hand, whose table of objects is left for the reader to mend. */
  Path plain(String... objects) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write("%PDF-1.7\n".getBytes(StandardCharsets.ISO_8859_1));
    for (int i = 0; i < objects.length; i++) {
      String object = (i + 1) + " 0 obj\n" + objects[i] + "\nendobj\n";
      bytes.write(object.getBytes(StandardCharsets.ISO_8859_1));
    }
    bytes.write("trailer\n<< /Root 1 0 R >>\n%%EOF\n".getBytes(StandardCharsets.ISO_8859_1));
    return Files.write(folder.resolve("plain-" + System.nanoTime() + ".pdf"), bytes.toByteArray());
  }
}
