package gapwise.store;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Damage done to a database file from outside, while nobody has it open. */
public final class DamagedFile {
  /** SQLite's usual one. */
  private static final int PAGE = 4096;

  private DamagedFile() {}

  /** Writes other words of the same length over some that stand in the file once. */
  public static void change(Path file, String words, String others) throws IOException {
    assertEquals(words.length(), others.length());
    // One byte a character, so that places in the text are places in the file.
    String bytes = Files.readString(file, ISO_8859_1);
    int at = bytes.indexOf(words);
    assertTrue(at > 0 && bytes.indexOf(words, at + 1) < 0, "stands there once: " + words);
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      raw.seek(at);
      raw.write(others.getBytes(UTF_8));
    }
  }

  /** Writes noise over the page where some words stand that stand in the file once. */
  static void noiseWhere(Path file, String words) throws IOException {
    int at = Files.readString(file, ISO_8859_1).indexOf(words);
    assertTrue(at > 0, words);
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      raw.seek(at / PAGE * PAGE);
      raw.write(noise());
    }
  }

  private static byte[] noise() {
    byte[] noise = new byte[PAGE];
    Arrays.fill(noise, (byte) 0x5A);
    return noise;
  }

  /** Writes noise over every other page from three quarters on. */
  static void noise(Path file) throws IOException {
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      for (long at = raw.length() / 4 * 3; at + PAGE < raw.length(); at += 2L * PAGE) {
        raw.seek(at / PAGE * PAGE);
        raw.write(noise());
      }
    }
  }
}
