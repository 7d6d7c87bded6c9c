package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Database;
import gapwise.store.database.SqliteDatabase;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The file behind the store: what it refuses, how it fails, how it is copied. */
class StoreFileTest {
  private static final Clock CLOCK = Clock.systemUTC();

  @TempDir Path home;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE document_version SET content = '{}'",
        "UPDATE document_version SET written_by = 'other' WHERE version = 1",
        "DELETE FROM document_version",
        "DELETE FROM document_version WHERE change_number = 2",
        "INSERT OR REPLACE INTO document_version VALUES (1, 'study', 'S0', 1, '', '', '', '{}', NULL)",
        "INSERT INTO document_version VALUES (9, 'study', 'S9', 1, '', '', '', '{}', NULL)",
        "INSERT INTO document_version VALUES (4, 'study', 'S0', 5, '', '', '', '{}', NULL)"
      })
  void theDatabaseItselfRefusesToChangeHistory(String statement) throws SQLException {
    writeThree();
    try (Connection connection = connect();
        Statement sql = connection.createStatement()) {
      String before = content(sql);
      SQLException refused = assertThrows(SQLException.class, () -> sql.executeUpdate(statement));
      assertTrue(refused.getMessage().contains("SQLITE_CONSTRAINT_TRIGGER"), refused.getMessage());
      assertEquals(before, content(sql));
    }
  }

  @Test
  void theFileIsWrittenAheadAndFlushedAtEveryCommit() throws SQLException {
    try (DocumentStore store = DocumentStore.open(home, CLOCK);
        Connection settings = SqliteDatabase.ofHome(home).connect();
        Statement sql = settings.createStatement()) {
      assertEquals("wal", first(sql, "PRAGMA journal_mode"));
      // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
      assertEquals("2", first(sql, "PRAGMA synchronous"));
      assertEquals("1", first(sql, "PRAGMA foreign_keys"));
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
    }
  }

  @Test
  void aSecondOpeningOfAHomeIsToldThatItIsInUse() {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals("store-in-use", openingFails());
      assertEquals(0, store.lastChange());
    }
    DocumentStore.open(home, CLOCK).close();
  }

  @Test
  void aFileThatIsNoDatabaseIsToldWithAdviceAndLeftAsItIs() throws IOException {
    Path file = home.resolve(Database.FILE);
    byte[] other = "this is no database, but a long enough letter".repeat(50).getBytes(UTF_8);
    Files.write(file, other);
    StoreUnusableException failure =
        assertThrows(StoreUnusableException.class, () -> DocumentStore.open(home, CLOCK));
    assertEquals("store-damaged", failure.problem().code());
    assertTrue(failure.problem().message().contains("backup"));
    assertEquals(other.length, Files.size(file));
    // The failed opening has let go of the home.
    Files.delete(file);
    DocumentStore.open(home, CLOCK).close();
  }

  @Test
  void aFileCutOffIsToldAsDamaged() throws IOException {
    writeMany();
    Path file = home.resolve(Database.FILE);
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      bytes.setLength(bytes.length() / 2);
    }
    assertEquals("store-damaged", openingFails());
  }

  @Test
  void aFileDamagedInTheMiddleIsFoundByTheCheckAndToldWhenRead() throws IOException {
    writeMany();
    try (RandomAccessFile bytes =
        new RandomAccessFile(home.resolve(Database.FILE).toFile(), "rw")) {
      byte[] noise = new byte[4096];
      java.util.Arrays.fill(noise, (byte) 0x5A);
      for (long at = bytes.length() / 4 * 3; at + 4096 < bytes.length(); at += 8192) {
        bytes.seek(at / 4096 * 4096);
        bytes.write(noise);
      }
    }
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertFalse(store.soundnessCheck().run().orElseThrow().isSound());
      StoreUnusableException failure =
          assertThrows(StoreUnusableException.class, () -> store.changesAfter(0, version -> {}));
      assertEquals("store-damaged", failure.problem().code());
    }
  }

  @Test
  void aHomeThatIsAFileIsToldAsUnusable() throws IOException {
    Path file = Files.createFile(home.resolve("file"));
    StoreUnusableException failure =
        assertThrows(StoreUnusableException.class, () -> DocumentStore.open(file, CLOCK));
    assertEquals("home-unusable", failure.problem().code());
  }

  @Test
  void aStoreOfANewerProgramIsRefusedAndLeftAlone() throws SQLException {
    writeThree();
    try (Connection connection = connect();
        Statement sql = connection.createStatement()) {
      sql.executeUpdate(
          "INSERT INTO flyway_schema_history VALUES (99, '99', 'later', 'SQL', 'V99__later.sql', 1,"
              + " 'x', '2030-01-01 00:00:00.000', 1, 1)");
    }
    assertEquals("store-newer", openingFails());
  }

  @Test
  void aBackupMadeWhileOthersWriteIsAWholeStore() throws IOException {
    Path backup = home.resolve("copies/monday.db");
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.write(three(), "ann", "test");
      store.writeAll(
          Stream.of(Write.put("study", "late", "{}")).peek(write -> backUp(backup)).iterator(),
          "ann",
          "while the backup runs");
      assertEquals(4, store.lastChange());
    }
    Path other = Files.createDirectory(home.resolve("other"));
    Files.copy(backup, other.resolve(Database.FILE));
    try (DocumentStore copy = DocumentStore.open(other, CLOCK)) {
      assertTrue(copy.soundnessCheck().run().orElseThrow().isSound());
      assertEquals(3, copy.lastChange());
      assertEquals(2, copy.history("study", "S0").size());
      copy.write(three(), "ann", "goes on");
      assertEquals(6, copy.lastChange());
    }
  }

  @Test
  void aBackupNeverOverwritesAFileAndLeavesNothingHalfDone() throws IOException {
    Path folder = Files.createDirectory(home.resolve("copies"));
    Path backup = Files.writeString(folder.resolve("monday.db"), "older");
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertThrows(FileAlreadyExistsException.class, () -> Backup.write(home, backup));
    }
    assertEquals("older", Files.readString(backup));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(backup), files.toList());
    }
  }

  private static final java.nio.charset.Charset UTF_8 = StandardCharsets.UTF_8;

  private void backUp(Path file) {
    try {
      Backup.write(home, file);
    } catch (IOException failure) {
      throw new java.io.UncheckedIOException(failure);
    }
  }

  private String openingFails() {
    return assertThrows(StoreUnusableException.class, () -> DocumentStore.open(home, CLOCK))
        .problem()
        .code();
  }

  private static List<Write> three() {
    return List.of(
        Write.put("study", "S0", "{}"),
        Write.put("study", "S1", "{}"),
        Write.put("study", "S0", "{\"n\":1}"));
  }

  private void writeThree() {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.write(three(), "ann", "test");
    }
  }

  private void writeMany() {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      String json = "{\"words\":\"" + "bone ".repeat(200) + "\"}";
      store.writeAll(
          IntStream.range(0, 500).mapToObj(n -> Write.put("study", "S" + n, json)).iterator(),
          "ann",
          "import");
    }
  }

  private Connection connect() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + home.resolve(Database.FILE));
  }

  private static String content(Statement sql) throws SQLException {
    return first(
        sql,
        "SELECT group_concat(change_number || kind || document_key || version || written_by ||"
            + " content) FROM document_version");
  }

  private static String first(Statement sql, String query) throws SQLException {
    try (ResultSet row = sql.executeQuery(query)) {
      return row.getString(1);
    }
  }
}
