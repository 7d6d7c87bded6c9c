package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.table.Tables;
import gapwise.paper.trace.Figures;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files spoilt in many ways: every one gets an answer, and none an exception. */
class PaperFuzzTest {
  private static final int FILES_A_SEED = 40;
  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final Caps CAPS = Caps.STANDARD.withMilliseconds(5_000);

  @TempDir Path folder;

  private List<byte[]> sound() throws IOException {
    List<byte[]> files = new ArrayList<>();
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 80, 9, "Table 1. Invented");
      for (int row = 0; row < 6; row++) {
        drawn.text(60, 100 + 14 * row, 9, "row " + row);
        drawn.right(200, 100 + 14 * row, 9, "" + 7 * row);
        drawn.right(280, 100 + 14 * row, 9, 3 * row + " (4%)");
      }
      drawn.line(60, 86, 290, 86);
      files.add(Files.readAllBytes(drawn.save(folder)));
    }
    try (Drawn drawn = new Drawn()) {
      drawn.upwards(40, 300, 8, "Share");
      for (int i = 0; i <= 4; i++) {
        drawn.middle(100 + 50 * i, 320, 8, "" + 6 * i);
        drawn.right(92, 303 - 50 * i, 8, "" + 25 * i);
      }
      drawn.path(100, 100, 150, 100, 150, 140, 220, 140, 220, 200, 300, 200);
      drawn.page(300, 300);
      drawn.text(10, 20, 8, "second page");
      files.add(Files.readAllBytes(drawn.save(folder)));
    }
    return files;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void spoiltFilesGetAnAnswer(long seed) throws IOException {
    Random random = new Random(seed);
    List<byte[]> sound = sound();
    int read = 0;
    for (int i = 0; i < FILES_A_SEED; i++) {
      byte[] spoilt = spoilt(sound.get(i % sound.size()), random);
      Path file = Files.write(folder.resolve("spoilt.pdf"), spoilt);
      read += assertTimeoutPreemptively(PATIENCE, () -> pagesRead(file));
    }
    assertTrue(read >= 0);
  }

  private static int pagesRead(Path file) {
    Opening opening = Paper.open(file, CAPS);
    if (!(opening instanceof Opened opened)) {
      assertNotNull(((Refused) opening).sentence());
      return 0;
    }
    int read = 0;
    try (Paper paper = opened.paper()) {
      for (int number = 1; number <= Math.min(3, paper.pages()); number++) {
        if (paper.page(number) instanceof Page page) {
          read++;
          Tables.on(page);
          Figures.on(page);
        }
        assertNotNull(paper.picture(number, 20));
      }
    }
    return read;
  }

  private static byte[] spoilt(byte[] sound, Random random) {
    byte[] bytes = sound.clone();
    switch (random.nextInt(5)) {
      case 0 -> {
        for (int i = 0; i < 1 + random.nextInt(30); i++) {
          bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
      }
      case 1 -> bytes = Arrays.copyOf(bytes, 9 + random.nextInt(bytes.length - 9));
      case 2 -> swap(bytes, random);
      case 3 -> {
        int from = random.nextInt(bytes.length);
        int length = Math.min(bytes.length - from, 1 + random.nextInt(400));
        Arrays.fill(bytes, from, from + length, (byte) random.nextInt(256));
      }
      default -> digits(bytes, random);
    }
    return bytes;
  }

  /** Exchanges two stretches, mostly of different packed parts. */
  private static void swap(byte[] bytes, Random random) {
    int length = Math.min(bytes.length / 4, 1 + random.nextInt(3_000));
    int first = random.nextInt(bytes.length - length);
    int second = random.nextInt(bytes.length - length);
    byte[] kept = Arrays.copyOfRange(bytes, first, first + length);
    System.arraycopy(bytes, second, bytes, first, length);
    System.arraycopy(kept, 0, bytes, second, length);
  }

  /** Changes digits outside of the packed parts: lengths, sizes, numbers of objects. */
  private static void digits(byte[] bytes, Random random) {
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    for (int i = 0; i < 12; i++) {
      int at = text.indexOf(" obj", random.nextInt(bytes.length));
      int end = at < 0 ? -1 : text.indexOf("stream", at);
      for (int j = Math.max(0, at); j < Math.min(end, at + 300); j++) {
        if (Character.isDigit(bytes[j]) && random.nextInt(3) == 0) {
          bytes[j] = (byte) ('0' + random.nextInt(10));
        }
      }
    }
  }

  @Test
  void soundFilesAreReadWhole() throws IOException {
    for (byte[] sound : sound()) {
      assertTrue(pagesRead(Files.write(folder.resolve("sound.pdf"), sound)) >= 1);
    }
  }
}
