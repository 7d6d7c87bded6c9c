package gapwise.server.testing;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;

/** Damage done from outside to the database of a home that nobody has open. */
public final class DamagedDatabase {
  private DamagedDatabase() {}

  /** Changes one letter within some words that stand in the content of one study. */
  public static void changeLetterIn(Path home, String words) throws IOException {
    Path file = home.resolve("gapwise.db");
    // One letter a byte, so that places in the text are places in the file.
    String all = Files.readString(file, ISO_8859_1);
    int at = all.indexOf(words);
    // Where they stand twice, one of them is what a page held before its rows were moved.
    assertTrue(at > 0 && all.indexOf(words, at + 1) < 0, "stands in the file once: " + words);
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      raw.seek(at);
      raw.write('#');
    }
  }

  /** Writes noise over the page in which some words stand. */
  public static void noiseWhere(Path home, String words) throws IOException {
    Path file = home.resolve("gapwise.db");
    int at = Files.readString(file, ISO_8859_1).indexOf(words);
    assertTrue(at > 0, "stands in the file: " + words);
    int page = 4096;
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      raw.seek(at / page * page);
      raw.write("Z".repeat(page).getBytes(ISO_8859_1));
    }
  }
}
