package gapwise.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.ContentChecksumMigration;
import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Layout;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the very first layout left is put back into the newest, and a home in use is left alone. */
class OldestBackupTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-02-03T04:05:06Z"), ZoneOffset.UTC);

  private static final List<String> ROWS =
      List.of(
          "1 study aster-2001 1 2025-01-01T00:00:00Z ann first import {\"n\":1}",
          "2 study briar-2002 1 2025-01-01T00:00:00.250Z ann first import"
              + " {\"words\":\"\u00FCber 5 \u2264 cm\"}",
          "3 study aster-2001 2 2025-01-02T10:11:12.345Z bo read again {\"n\":2}",
          "4 study briar-2002 2 2025-01-03T00:00:00Z bo retracted deleted",
          "5 import 0f0e0d0c-0b0a-4908-8706-050403020100 1 2025-01-03T00:00:01Z bo second import"
              + " {\"saved\":0}");

  @TempDir Path folder;
  private Path oldest;

  @BeforeEach
  void write() throws IOException, SQLException {
    oldest = folder.resolve("oldest.db");
    try (InputStream script =
            Objects.requireNonNull(getClass().getResourceAsStream("/store/oldest-layout.sql"));
        Connection connection = DriverManager.getConnection("jdbc:sqlite:" + oldest);
        Statement statement = connection.createStatement()) {
      for (String one : new String(script.readAllBytes(), UTF_8).split(";\n")) {
        if (!one.isBlank()) {
          statement.execute(one);
        }
      }
    }
  }

  private static List<String> rows(DocumentStore store) {
    List<String> rows = new ArrayList<>();
    store.changesAfter(
        0,
        version ->
            rows.add(
                String.join(
                    " ",
                    Long.toString(version.change()),
                    version.id().toString(),
                    Integer.toString(version.version()),
                    version.when().toString(),
                    version.who(),
                    version.why(),
                    version.json().orElse("deleted"))));
    return rows;
  }

  @Test
  void itGoesIntoANewFolderWithEqualContentInTheNewestLayout() throws SQLException {
    Path home = folder.resolve("home");
    Restore.Done done = Restore.of(oldest, home, CLOCK);
    assertEquals(5, done.soundness().versions());
    assertEquals(4, done.soundness().withoutChecksum());
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertTrue(store.wasPutBack());
      assertEquals(ROWS, rows(store));
      Soundness found = store.soundnessCheck().run().orElseThrow();
      assertTrue(found.isSound());
      assertEquals(0, found.withoutChecksum());
      Write next = Write.put("study", "briar-2002", "{}").expecting(2);
      assertEquals(List.of(), store.write(List.of(next), "bo", "goes on").conflicts());
    }
    try (Connection connection = DatabaseFile.connect(home.resolve(Database.FILE))) {
      assertEquals(Layout.KNOWN, Layout.of(connection).migrations());
    }
  }

  /** Each layout on the way is put back as well, with the rows of the first. */
  @ParameterizedTest
  @ValueSource(strings = {"2", "3", "4", "5", "6"})
  void everyLayoutBetweenGoesTheSameWay(String layout) {
    Flyway.configure()
        .dataSource("jdbc:sqlite:" + oldest, null, null)
        .locations(
            "classpath:gapwise/store/migration/sqlite", "classpath:gapwise/store/migration/any")
        .javaMigrations(new ContentChecksumMigration())
        .target(layout)
        .load()
        .migrate();
    Path home = folder.resolve("home");
    Restore.of(oldest, home, CLOCK);
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(ROWS, rows(store));
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
    }
  }

  @Test
  void aBackupOfTheRestoredFolderIsTheSameHistory() throws IOException {
    Path home = folder.resolve("home");
    Restore.of(oldest, home, CLOCK);
    DocumentStore.open(home, CLOCK).close();
    Path backup = folder.resolve("again.db");
    Backup.write(home, backup);
    Path other = folder.resolve("other");
    Restore.of(backup, other, CLOCK);
    try (DocumentStore store = DocumentStore.open(other, CLOCK)) {
      assertEquals(ROWS, rows(store));
    }
  }

  /** A server has the home open: backups are taken, nothing is put back, and it goes on writing. */
  @Test
  void aHomeInUseIsBackedUpAndNeverPutBackInto() throws IOException {
    Path home = folder.resolve("home");
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.write(List.of(Write.put("study", "cedar-2003", "{}")), "ann", "in use");
      StoreUnusableException refused =
          assertThrows(StoreUnusableException.class, () -> Restore.of(oldest, home, CLOCK));
      assertEquals("store-in-use", refused.problem().code());
      Path backup = folder.resolve("in-use.db");
      assertEquals(1, Backup.write(home, backup).versions());
      store.write(List.of(Write.put("study", "dill-2004", "{}")), "ann", "goes on");
      assertEquals(2, rows(store).size());
      Restore.of(backup, folder.resolve("other"), CLOCK);
    }
    try (DocumentStore store = DocumentStore.open(folder.resolve("other"), CLOCK)) {
      assertEquals(1, rows(store).size());
    }
    Restore.of(oldest, home, CLOCK);
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(ROWS, rows(store));
    }
    assertTrue(
        Files.exists(home.resolve("gapwise.db.replaced-2031-02-03T04-05-06Z")), "what was there");
  }
}
