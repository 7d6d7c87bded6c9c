package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One bit of the file changes somewhere: either that is found, or no record reads otherwise. */
class FlippedBitsTest {
  private static final int FLIPS = 400;
  private static final int STUDIES = 120;

  @TempDir Path home;

  @Test
  void noFlippedBitGivesOtherRecordsWithoutBeingFound() throws Exception {
    try (DocumentStore store = DocumentStore.open(home, Clock.systemUTC())) {
      store.writeAll(
          IntStream.range(0, STUDIES).mapToObj(FlippedBitsTest::write).iterator(), "ann", "import");
      store.write(List.of(Write.delete("study", "S7")), "ann", "a duplicate");
    }
    Path file = home.resolve(Database.FILE);
    byte[] sound = Files.readAllBytes(file);
    List<String> written = records(file);
    assertEquals(STUDIES + 1, written.size());
    Random random = new Random(20260301);
    int found = 0;
    for (int flip = 0; flip < FLIPS; flip++) {
      int bit = random.nextInt(sound.length * 8);
      byte[] damaged = sound.clone();
      damaged[bit / 8] ^= (byte) (1 << bit % 8);
      Files.write(file, damaged);
      if (isFound(file)) {
        found++;
      } else {
        assertEquals(written, records(file), "bit " + bit);
      }
    }
    // Most of the file is words of records, the rest room in its pages and words of who and when.
    assertTrue(found > FLIPS / 2, "found " + found);
  }

  private static Write write(int number) {
    String words = "bone \u00E4 ".repeat(20 + number);
    return Write.put("study", "S" + number, "{\"n\":" + number + ",\"words\":\"" + words + "\"}");
  }

  private static boolean isFound(Path file) {
    try (Connection connection = DatabaseFile.connect(file)) {
      return !Examination.of(connection, Long.MAX_VALUE, () -> false).soundness().isSound();
    } catch (SQLException unreadable) {
      return true;
    }
  }

  private static List<String> records(Path file) throws SQLException {
    try (Connection connection = DatabaseFile.connect(file)) {
      return DatabaseFile.texts(
          connection,
          "SELECT change_number || ' ' || kind || ' ' || document_key || ' ' || version || ' '"
              + " || COALESCE(content, 'deleted') FROM document_version ORDER BY change_number");
    }
  }
}
