package gapwise.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Checksum;
import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Layout;
import gapwise.store.database.SqliteDatabase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files of older layouts are carried to the newest, those of newer ones left alone. */
class LayoutTest {
  private static final Clock CLOCK = Clock.systemUTC();

  /** More than are carried at a time. */
  private static final int ROWS = 450;

  @TempDir Path home;
  private Path file;

  @BeforeEach
  void name() {
    file = home.resolve(Database.FILE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "2"})
  void rowsOfAnOlderLayoutAreCarriedToTheNewestWithTheirChecksums(String layout) throws Exception {
    older(layout);
    List<String> before = rows();
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(ROWS + 1, store.lastChange());
      assertEquals(
          Optional.of(json(3)), store.latest("study", "S3").flatMap(DocumentVersion::json));
      assertTrue(store.latest("study", "S0").isEmpty(), "a deletion stays one");
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
      Write next = Write.put("study", "S0", "{}").expecting(2);
      assertEquals(List.of(), store.write(List.of(next), "bo", "goes on").conflicts());
    }
    assertEquals(before, rows().subList(0, ROWS + 1));
    assertEquals(Layout.KNOWN, layout().migrations());
    for (String[] row : checksums()) {
      assertEquals(row[0] == null ? null : sha256(row[0]), row[1]);
    }
    assertRefusesToChangeHistory();
  }

  /** SHA-256 of "abc", from the examples of FIPS 180-4. */
  @Test
  void theChecksumIsTheOneThatOtherProgramsWorkOut() {
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        Checksum.of("abc".getBytes(UTF_8)));
  }

  @Test
  void checksumsAreOfTheBytesOfTheContentWhateverItsLetters() throws Exception {
    String words = "{\"title\":\"\u00FCber 5 \u2264 cm \uD83E\uDDB4\"}";
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.write(List.of(Write.put("study", "A", words)), "ann", "test");
    }
    assertEquals(sha256(words), checksums().get(0)[1]);
  }

  @Test
  void aColumnThatIsThereAlreadyDoesNotStandInTheWay() throws Exception {
    older("1");
    execute("ALTER TABLE document_version ADD COLUMN content_sha256 TEXT");
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
    }
    assertEquals(sha256(json(1)), checksums().get(1)[1]);
  }

  @Test
  void rowsThatAnotherProgramWroteWithoutAChecksumAreReadAndCounted() throws Exception {
    DocumentStore.open(home, CLOCK).close();
    execute(
        "INSERT INTO document_version (change_number, kind, document_key, version, written_at,"
            + " written_by, reason, content) VALUES (1, 'study', 'A', 1, '2026-03-01T12:00:00Z',"
            + " 'x', 'y', '{}')");
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(Optional.of("{}"), store.latest("study", "A").orElseThrow().json());
      Soundness found = store.soundnessCheck().run().orElseThrow();
      assertTrue(found.isSound());
      assertEquals(1, found.withoutChecksum());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"3, later", "4, later", "99, content checksum"})
  void aStoreOfALaterLayoutIsRefusedAndItsFileNotTouched(String layout) throws Exception {
    DocumentStore.open(home, CLOCK).close();
    String[] words = layout.split(", ");
    execute(
        "INSERT INTO flyway_schema_history VALUES (9, '%s', '%s', 'SQL', 'V.sql', 1, 'x',"
                .formatted(words[0], words[1])
            + " '2030-01-01 00:00:00.000', 1, 1)");
    byte[] before = Files.readAllBytes(file);
    assertEquals("store-newer", failure().problem().code());
    Path backup = home.resolve("b.db");
    assertEquals(
        "store-newer",
        assertThrows(StoreUnusableException.class, () -> Backup.write(home, backup))
            .problem()
            .code());
    assertFalse(Files.exists(backup));
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @Test
  void aDatabaseOfAnotherProgramIsRefusedAndNotTouched() throws Exception {
    try (Connection connection = SqliteDatabase.ofHome(home).connect();
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE TABLE cookies (name TEXT)");
    }
    byte[] before = Files.readAllBytes(file);
    assertEquals("store-foreign", failure().problem().code());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @Test
  void aDamagedStoreOfAnOlderLayoutIsRefusedBeforeItIsChanged() throws Exception {
    older("2");
    DamagedFile.noise(file);
    byte[] before = Files.readAllBytes(file);
    assertEquals("store-damaged", failure().problem().code());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @Test
  void aBackupOfAnOlderLayoutIsCheckedAsFarAsItGoes() throws Exception {
    older("2");
    Path backup = home.resolve("b.db");
    Soundness copied = Backup.write(home, backup);
    assertEquals(ROWS + 1, copied.versions());
    assertEquals(ROWS, copied.withoutChecksum());
    Path other = home.resolve("other");
    Restore.of(backup, other, CLOCK);
    try (DocumentStore store = DocumentStore.open(other, CLOCK)) {
      assertEquals(ROWS + 1, store.lastChange());
      assertEquals(0, store.soundnessCheck().run().orElseThrow().withoutChecksum());
    }
  }

  private StoreUnusableException failure() {
    return assertThrows(StoreUnusableException.class, () -> DocumentStore.open(home, CLOCK));
  }

  /** A store as the program of that layout left it: its own scripts, rows written by hand. */
  private void older(String layout) throws SQLException {
    Flyway.configure()
        .dataSource("jdbc:sqlite:" + file, null, null)
        .locations("classpath:gapwise/store/migration/sqlite")
        .target(layout)
        .load()
        .migrate();
    try (Connection connection = SqliteDatabase.ofHome(home).connect();
        PreparedStatement row =
            connection.prepareStatement(
                "INSERT INTO document_version (change_number, kind, document_key, version,"
                    + " written_at, written_by, reason, content)"
                    + " VALUES (?, 'study', ?, ?, '2025-01-01T00:00:00Z', 'ann', 'import', ?)")) {
      connection.setAutoCommit(false);
      for (int number = 0; number <= ROWS; number++) {
        boolean deletion = number == ROWS;
        row.setInt(1, number + 1);
        row.setString(2, "S" + (deletion ? 0 : number));
        row.setInt(3, deletion ? 2 : 1);
        row.setString(4, deletion ? null : json(number));
        row.executeUpdate();
      }
      connection.commit();
    }
  }

  private static String json(int number) {
    return "{\"n\":" + number + ",\"words\":\"" + "bone \u00E4 ".repeat(40) + "\"}";
  }

  private void execute(String sql) throws SQLException {
    try (Connection connection = DatabaseFile.connect(file);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private Layout layout() throws SQLException {
    try (Connection connection = DatabaseFile.connect(file)) {
      return Layout.of(connection);
    }
  }

  private List<String> rows() throws SQLException {
    try (Connection connection = DatabaseFile.connect(file)) {
      return DatabaseFile.texts(
          connection,
          "SELECT change_number || kind || document_key || version || written_at || written_by"
              + " || reason || COALESCE(content, 'deleted') FROM document_version"
              + " ORDER BY change_number");
    }
  }

  private List<String[]> checksums() throws SQLException {
    List<String[]> pairs = new ArrayList<>();
    try (Connection connection = DatabaseFile.connect(file);
        Statement statement = connection.createStatement();
        var rows =
            statement.executeQuery(
                "SELECT content, content_sha256 FROM document_version ORDER BY change_number")) {
      while (rows.next()) {
        pairs.add(new String[] {rows.getString(1), rows.getString(2)});
      }
    }
    return pairs;
  }

  private static String sha256(String text) throws Exception {
    return HexFormat.of()
        .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(UTF_8)));
  }

  private void assertRefusesToChangeHistory() throws IOException, SQLException {
    for (String sql :
        List.of(
            "UPDATE document_version SET content_sha256 = NULL",
            "DELETE FROM document_version WHERE change_number = 1",
            "INSERT INTO document_version (change_number, kind, document_key, version, written_at,"
                + " written_by, reason) VALUES (9999, 'study', 'S1', 2, '', '', '')")) {
      SQLException refused = assertThrows(SQLException.class, () -> execute(sql));
      assertTrue(refused.getMessage().contains("SQLITE_CONSTRAINT_TRIGGER"), refused.getMessage());
    }
  }
}
