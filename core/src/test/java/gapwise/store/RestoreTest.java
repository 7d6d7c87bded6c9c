package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Database;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup comes back whole, or nothing changes. */
class RestoreTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-01T12:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;
  private Path home;
  private Path backup;

  @BeforeEach
  void backUp() throws IOException {
    home = folder.resolve("home");
    backup = folder.resolve("b.db");
    write(home, 1, 3);
    Backup.write(home, backup);
    write(home, 4, 6);
  }

  @Test
  void intoANewFolder() throws IOException {
    Path fresh = folder.resolve("new/base");
    Restore.Done done = Restore.of(backup, fresh, CLOCK);
    assertEquals(3, done.soundness().versions());
    assertEquals(Optional.empty(), done.replaced());
    assertEquals(List.of("S1", "S2", "S3"), keys(fresh));
  }

  @Test
  void intoAHomeThatGoesOnFromThereWhileTheOldDatabaseIsKept() throws IOException {
    Restore.Done done = Restore.of(backup, home, CLOCK);
    Path kept = home.resolve("gapwise.db.replaced-2026-03-01T12-00-00Z");
    assertEquals(Optional.of(kept.toRealPath()), done.replaced());
    assertEquals(List.of("S1", "S2", "S3"), keys(home));
    write(home, 7, 7);
    assertEquals(List.of("S1", "S2", "S3", "S7"), keys(home));
    // What was replaced is a whole database, and comes back the same way.
    Restore.Done back = Restore.of(kept, home, CLOCK);
    assertEquals(
        Optional.of("gapwise.db.replaced-2026-03-01T12-00-00Z-2"),
        back.replaced().map(file -> file.getFileName().toString()));
    assertEquals(List.of("S1", "S2", "S3", "S4", "S5", "S6"), keys(home));
  }

  @Test
  void theOldDatabaseIsKeptWithTheLogThatBelongsToIt() throws IOException {
    Path copy = Files.createDirectory(folder.resolve("killed"));
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.write(List.of(Write.put("study", "late", "{}")), "ann", "in the log alone");
      // The files as a killed process leaves them.
      for (String name :
          List.of("gapwise.db", "gapwise.db-wal", "gapwise.db-shm", "gapwise.home")) {
        Files.copy(home.resolve(name), copy.resolve(name));
      }
    }
    Path kept = Restore.of(backup, copy, CLOCK).replaced().orElseThrow();
    assertFalse(Files.exists(copy.resolve("gapwise.db-wal")));
    assertEquals(List.of("S1", "S2", "S3"), keys(copy));
    Restore.of(kept, copy, CLOCK);
    assertTrue(keys(copy).contains("late"));
  }

  @Test
  void aHomeInUseIsRefused() throws IOException {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals("store-in-use", failure(backup, home).problem().code());
      assertEquals(6, store.lastChange());
    }
  }

  @Test
  void aDamagedBackupIsRefusedNamingTheRecordAndTheHomeStaysAsItIs() throws IOException {
    DamagedFile.change(backup, "words of 2 ", "words of 8 ");
    List<Path> before = files();
    byte[] database = Files.readAllBytes(home.resolve(Database.FILE));
    StoreUnusableException failure = failure(backup, home);
    assertEquals("store-damaged", failure.problem().code());
    assertEquals(backup.toString(), failure.problem().where());
    assertTrue(failure.getMessage().contains("study S2, version 1"), failure::getMessage);
    assertEquals(before, files());
    assertArrayEquals(database, Files.readAllBytes(home.resolve(Database.FILE)));
  }

  @Test
  void whatIsNoBackupIsRefused() throws Exception {
    assertEquals("no-backup", failure(folder.resolve("none.db"), home).problem().code());
    Path letter = Files.writeString(folder.resolve("letter.db"), "a letter ".repeat(500));
    assertEquals("store-damaged", failure(letter, home).problem().code());
    Path other = folder.resolve("other.db");
    execute(other, "CREATE TABLE cookies (name TEXT)");
    assertEquals("no-backup", failure(other, home).problem().code());
    execute(
        backup,
        "INSERT INTO flyway_schema_history VALUES (9, '9', 'later', 'SQL', 'V9.sql', 1, 'x',"
            + " '2030-01-01 00:00:00.000', 1, 1)");
    assertEquals("store-newer", failure(backup, home).problem().code());
    assertEquals(6, keys(home).size());
  }

  @Test
  void aDatabaseOnAnotherDiskIsReplacedThereAndItsLinkStays() throws IOException {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    Files.move(home.resolve(Database.FILE), disk.resolve("records.db"));
    Files.createSymbolicLink(home.resolve(Database.FILE), disk.resolve("records.db"));
    write(home, 7, 7);
    Restore.of(backup, home, CLOCK);
    assertTrue(Files.isSymbolicLink(home.resolve(Database.FILE)));
    assertEquals(List.of("S1", "S2", "S3"), keys(home));
  }

  @Test
  void aBackupRightAfterARestoreNeedsNoOpeningBetween() throws IOException {
    Restore.of(backup, home, CLOCK);
    assertEquals(3, Backup.write(home, folder.resolve("again.db")).versions());
  }

  private StoreUnusableException failure(Path from, Path into) {
    return assertThrows(StoreUnusableException.class, () -> Restore.of(from, into, CLOCK));
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(home)) {
      return files.sorted().toList();
    }
  }

  private static List<String> keys(Path home) {
    try (DocumentStore store = DocumentStore.open(home, CLOCK, Expected.A_HOME)) {
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
      List<String> keys = new java.util.ArrayList<>();
      store.forEachLatest("study", version -> keys.add(version.id().key()));
      return keys;
    }
  }

  private static void write(Path home, int from, int to) {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      for (int number = from; number <= to; number++) {
        String json = "{\"n\":\"words of " + number + " \"}";
        store.write(List.of(Write.put("study", "S" + number, json)), "ann", "test");
      }
    }
  }

  private static void execute(Path file, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
