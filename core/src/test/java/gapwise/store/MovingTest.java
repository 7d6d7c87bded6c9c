package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Checksum;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.PostgresDatabase;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An evidence base moves from the file of a home to a server and back with all it holds. */
class MovingTest {
  private static final Clock NOON =
      Clock.fixed(Instant.parse("2026-03-01T12:00:00Z"), ZoneOffset.UTC);
  private static final List<String> TABLES = List.of("document_version", "working_copy");

  @TempDir Path folder;
  private StorePlace server;

  @BeforeEach
  void newServer() {
    server = RealServer.newPlace(folder.resolve("server-home"));
  }

  @Test
  void thereAndBackEveryRowIsTheSameByteForByte() throws Exception {
    Path home = folder.resolve("home");
    try (DocumentStore store = DocumentStore.open(home, NOON)) {
      fill(store);
    }
    Backup.write(home, folder.resolve("there.db"));
    Soundness there = Restore.of(folder.resolve("there.db"), server, NOON).soundness();
    assertEquals(304, there.versions());
    assertTrue(there.isSound());

    Backup.write(server, folder.resolve("back.db"));
    Path second = folder.resolve("second");
    Restore.of(folder.resolve("back.db"), second, NOON);

    String rows = rowsOfFile(home);
    assertEquals(rows, rowsOfServer());
    assertEquals(rows, rowsOfFile(second));
    try (DocumentStore store = DocumentStore.open(second, NOON)) {
      assertEquals(2, store.history("study", "A").size());
      assertEquals("typing error", store.history("study", "A").get(1).why());
      store.write(List.of(Write.put("study", "A", "{}")), "ann", "after the move");
      assertEquals(305, store.lastChange());
    }
  }

  @Test
  void aBackupOfTheFirstLayoutGoesToAServerToo() throws Exception {
    Path old = folder.resolve("old.db");
    Flyway.configure()
        .dataSource("jdbc:sqlite:" + old, null, null)
        .locations("classpath:gapwise/store/migration/sqlite")
        .target("1")
        .load()
        .migrate();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
        Statement statement = connection.createStatement()) {
      statement.execute(
          "INSERT INTO document_version VALUES (1, 'study', 'A', 1, '2025-01-01T00:00:00Z', 'ann',"
              + " 'import', '{}'), (2, 'study', 'A', 2, '2025-01-02T00:00:00Z', 'bo', 'gone', NULL)");
    }
    Restore.of(old, server, NOON);
    try (DocumentStore store = DocumentStore.open(server, NOON, Expected.A_HOME)) {
      assertEquals(2, store.lastChange());
      assertTrue(store.version("study", "A", 2).orElseThrow().isDeletion());
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
      assertEquals(0, store.soundnessCheck().run().orElseThrow().withoutChecksum());
    }
  }

  @Test
  void aBackupGoesIntoAnEmptyDatabaseAlone() throws IOException {
    Path home = folder.resolve("home");
    try (DocumentStore store = DocumentStore.open(home, NOON)) {
      fill(store);
    }
    Path backup = folder.resolve("backup.db");
    Backup.write(home, backup);
    try (DocumentStore store = DocumentStore.open(server, NOON, Expected.ANYTHING)) {
      store.write(List.of(Write.put("study", "here", "{}")), "bo", "was here first");
    }
    StoreUnusableException refused =
        assertThrows(StoreUnusableException.class, () -> Restore.of(backup, server, NOON));
    assertEquals("database-not-empty", refused.problem().code());
    try (DocumentStore store = DocumentStore.open(server, NOON, Expected.A_HOME)) {
      assertEquals(1, store.lastChange());
    }
  }

  @Test
  void aBackupIsOfOneMomentWhileOthersWrite() throws Exception {
    try (DocumentStore store = DocumentStore.open(server, NOON, Expected.ANYTHING)) {
      fill(store);
      Thread writing =
          new Thread(
              () -> {
                for (int number = 0; number < 40; number++) {
                  store.write(List.of(Write.put("study", "x", "{}")), "bo", "meanwhile");
                }
              });
      writing.start();
      Soundness copied = Backup.write(server, folder.resolve("meanwhile.db"));
      writing.join();
      assertEquals(copied.versions(), copied.lastChange());
      assertTrue(copied.lastChange() >= 304);
      assertEquals(344, store.lastChange());
    }
  }

  @Test
  void aHomeThatMovedIsNotOpenedAsIfItHadStayed() throws IOException {
    Path home = folder.resolve("home");
    try (DocumentStore store = DocumentStore.open(home, NOON)) {
      fill(store);
    }
    StorePlace moved = new StorePlace(home, server.database());
    assertEquals("store-elsewhere", refusal(moved));
    Backup.write(home, folder.resolve("b.db"));
    Path old = Restore.of(folder.resolve("b.db"), moved, NOON).replaced().orElseThrow();
    assertTrue(Files.exists(old), "the file of before is kept");
    try (DocumentStore store = DocumentStore.open(moved, NOON, Expected.A_HOME)) {
      assertEquals(304, store.lastChange());
      assertTrue(store.wasPutBack(), "the index of before is not of this database");
    }
    try (DocumentStore store = DocumentStore.open(moved, NOON, Expected.A_HOME)) {
      assertFalse(store.wasPutBack());
    }
    assertEquals("store-elsewhere", refusal(StorePlace.of(home)));
    assertThrows(
        StoreUnusableException.class, () -> Backup.write(home, folder.resolve("stale.db")));
    assertFalse(Files.exists(folder.resolve("stale.db")));

    Backup.write(moved, folder.resolve("c.db"));
    Restore.of(folder.resolve("c.db"), StorePlace.of(home), NOON);
    try (DocumentStore store = DocumentStore.open(home, NOON)) {
      assertEquals(304, store.lastChange());
    }
  }

  private static String refusal(StorePlace place) {
    return assertThrows(
            StoreUnusableException.class,
            () -> DocumentStore.open(place, NOON, Expected.ANYTHING).close())
        .problem()
        .code();
  }

  /** Versions, deletions, letters of other scripts, and what somebody is at work on. */
  private static void fill(DocumentStore store) {
    List<Write> many = new ArrayList<>();
    for (int number = 0; number < 300; number++) {
      many.add(Write.put("study", "S" + number, "{\"words\":\"" + "bone ".repeat(number) + "\"}"));
    }
    store.write(many, "ann", "import of many.xlsx");
    store.write(List.of(Write.put("study", "A", "{\"t\":\"\u00FCber 5 \u2264 cm\"}")), "bo", "new");
    store.write(List.of(Write.put("study", "A", "{\"t\":\"\uD83E\uDDB4\"}")), "bo", "typing error");
    store.write(List.of(Write.put("reference", "R\t1", "[]")), "cy \u00E9", "\u0391, B; 'c'");
    store.write(List.of(Write.delete("study", "S7")), "ann", "duplicate");
    store.workingCopies().keep("draft", "one", "{\"d\":1}", "ann", 0);
    store.workingCopies().keep("draft", "one", "{\"d\":2}", "ann", 1);
    store.workingCopies().keep("mapping", "two", "\u00E4", "bo", 0);
  }

  private String rowsOfServer() throws SQLException {
    try (Connection connection =
        new PostgresDatabase(server.database().orElseThrow()).connectToLook()) {
      return rows(connection);
    }
  }

  private static String rowsOfFile(Path home) throws SQLException {
    try (Connection connection = DatabaseFile.connect(home.resolve("gapwise.db"))) {
      return rows(connection);
    }
  }

  /** SHA-256 over the bytes of every field of every row, lengths before them. */
  private static String rows(Connection connection) throws SQLException {
    var digest = Checksum.sha256();
    for (String table : TABLES) {
      try (Statement statement = connection.createStatement();
          ResultSet row = statement.executeQuery("SELECT * FROM " + table + " ORDER BY 1, 2, 3")) {
        while (row.next()) {
          for (int column = 1; column <= row.getMetaData().getColumnCount(); column++) {
            String field = String.valueOf(row.getString(column));
            byte[] bytes = field.getBytes(StandardCharsets.UTF_8);
            digest.update(
                (row.getMetaData().getColumnName(column) + bytes.length)
                    .getBytes(StandardCharsets.UTF_8));
            digest.update(bytes);
          }
        }
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
