package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A backup is whole and checked, or there is none. */
class BackupTest {
  private static final Clock CLOCK = Clock.systemUTC();
  private static final int STUDIES = 300;

  @TempDir Path folder;
  private Path home;
  private Path copies;
  private Path backup;

  @BeforeEach
  void fill() throws IOException {
    home = folder.resolve("home");
    copies = Files.createDirectory(folder.resolve("copies"));
    backup = copies.resolve("monday.db");
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.writeAll(
          IntStream.range(0, STUDIES)
              .mapToObj(n -> Write.put("study", "S" + n, json(n)))
              .iterator(),
          "ann",
          "import");
      store.write(List.of(Write.delete("study", "S7")), "ann", "a duplicate");
    }
  }

  private static String json(int number) {
    return "{\"title\":\"series number " + number + ".\",\"words\":\"" + "bone ".repeat(60) + "\"}";
  }

  @Test
  void aBackupAtRestTellsWhatIsInItAndLeavesNothingBesideEither() throws Exception {
    List<Path> before = files(home);
    Soundness copied = Backup.write(home, backup);
    assertTrue(copied.isSound());
    assertEquals(STUDIES + 1, copied.versions());
    assertEquals(STUDIES + 1, copied.lastChange());
    assertEquals(0, copied.withoutChecksum());
    assertEquals(List.of(backup), files(copies));
    assertEquals(before, files(home));
  }

  @Test
  void aBackupIsMadeWhileAnotherProcessWritesAndHoldsWhatWasAcknowledgedBefore() throws Exception {
    Path busy = folder.resolve("busy");
    Process writing = writing(busy);
    try (BufferedReader said = writing.inputReader(StandardCharsets.UTF_8)) {
      int acknowledged = 0;
      for (int round = 0; round < 3; round++) {
        for (int count = 0; count < 20; count++) {
          String line = said.readLine();
          assertNotNull(line, "the writing process ended by itself");
          acknowledged = Integer.parseInt(line);
        }
        Soundness copied = Backup.write(busy, copies.resolve(round + ".db"));
        assertTrue(copied.isSound());
        // Each write of that process is three versions, all or none.
        assertEquals(0, copied.versions() % 3);
        assertTrue(copied.versions() / 3 > acknowledged, copied + " after " + acknowledged);
      }
    } finally {
      assertTrue(writing.toHandle().destroyForcibly());
      writing.waitFor();
    }
    // The killed process left its log behind: a backup then has it all as well.
    long there = Backup.write(busy, copies.resolve("killed.db")).versions();
    try (DocumentStore store = DocumentStore.open(busy, CLOCK)) {
      assertEquals(store.lastChange(), there);
    }
  }

  @Test
  void aFolderThatIsNoHomeIsRefusedAndNeitherItNorABackupIsMade() throws Exception {
    Path mistyped = folder.resolve("hmoe");
    assertEquals("no-home", refused(mistyped));
    assertFalse(Files.exists(mistyped));
    Path other = Files.createDirectory(folder.resolve("letters"));
    Files.writeString(other.resolve("letter.txt"), "mine");
    assertEquals("no-home", refused(other));
    assertEquals(List.of(other.resolve("letter.txt")), files(other));
    assertEquals(List.of(), files(copies));
  }

  @Test
  void aRecordWhoseWordsChangedOnTheDiskIsNamedAndThereIsNoBackup() throws Exception {
    DamagedFile.change(home.resolve(Database.FILE), "series number 41.", "series number 47.");
    StoreUnusableException failure = failure(home);
    assertEquals("store-damaged", failure.problem().code());
    assertTrue(
        failure.problem().message().contains("1 record is damaged: study S41, version 1"),
        failure::getMessage);
    assertEquals(List.of(), files(copies));
  }

  @Test
  void recordsOfADamagedPageAreNamedAndThereIsNoBackup() throws Exception {
    DamagedFile.noiseWhere(home.resolve(Database.FILE), "series number 150.");
    StoreUnusableException failure = failure(home);
    assertEquals("store-damaged", failure.problem().code());
    assertTrue(failure.getMessage().contains("The file is damaged"), failure::getMessage);
    assertTrue(
        failure.getMessage().contains("study S150, version 1 (change 151): it cannot be read"),
        failure::getMessage);
    assertFalse(failure.getMessage().contains("study S250"), failure::getMessage);
    assertEquals(List.of(), files(copies));
  }

  @Test
  void aFileDamagedFromThreeQuartersOnGivesNoBackup() throws Exception {
    DamagedFile.noise(home.resolve(Database.FILE));
    StoreUnusableException failure = failure(home);
    assertEquals("store-damaged", failure.problem().code());
    assertTrue(
        failure.getMessage().matches("(?s).* records are damaged: .*\\(change 2\\d\\d\\): it .*"),
        failure::getMessage);
    assertEquals(List.of(), files(copies));
  }

  @Test
  void aRecordThatIsGoneFromTheFileIsMissed() throws Exception {
    execute("DROP TRIGGER document_version_is_never_deleted");
    execute("DELETE FROM document_version WHERE document_key = 'S200'");
    assertTrue(failure(home).getMessage().contains("(change 201): it is missing"));
    assertEquals(List.of(), files(copies));
  }

  @ParameterizedTest
  @ValueSource(strings = {"cut to nothing", "removed", "lost its last records"})
  void aHomeThatLostWhatItHadAcknowledgedGivesNoBackup(String how) throws Exception {
    Path file = home.resolve(Database.FILE);
    switch (how) {
      case "cut to nothing" -> Files.write(file, new byte[0]);
      case "removed" -> Files.delete(file);
      default -> {
        execute("DROP TRIGGER document_version_is_never_deleted");
        execute("DELETE FROM document_version WHERE change_number > 250");
      }
    }
    String code = refused(home);
    assertEquals(
        switch (how) {
          case "cut to nothing" -> "store-emptied";
          case "removed" -> "store-missing";
          default -> "store-behind";
        },
        code);
    assertEquals(List.of(), files(copies));
  }

  @Test
  void whatAKilledBackupLeftIsDeletedByTheNextButNotWhatAnotherIsWriting() throws Exception {
    Process ended = new ProcessBuilder("true").start();
    ended.waitFor();
    Path left = Files.writeString(copies.resolve("sunday.db." + ended.pid() + "-1.unfinished"), "");
    Path journal = Files.writeString(copies.resolve(left.getFileName() + "-journal"), "");
    Path own = Files.writeString(copies.resolve(name("sunday", 77)), "of an earlier run");
    Path others = copies.resolve("sunday.db." + ProcessHandle.of(1).orElseThrow().pid() + "-1.x");
    Files.writeString(others, "no backup of ours");
    try (Unfinished underWay = Unfinished.of(copies.resolve("now.db"))) {
      Backup.write(home, backup);
      assertEquals(List.of(backup, underWay.file(), others), files(copies));
    }
    assertFalse(Files.exists(left) || Files.exists(journal) || Files.exists(own));
    assertEquals(List.of(backup, others), files(copies));
  }

  private static String name(String day, int count) {
    return day + ".db." + ProcessHandle.current().pid() + "-" + count + "00.unfinished";
  }

  @Test
  void aBackupIsNeverOverwritten() throws Exception {
    Files.writeString(backup, "older");
    assertThrows(FileAlreadyExistsException.class, () -> Backup.write(home, backup));
    assertEquals("older", Files.readString(backup));
  }

  @Test
  void aPlaceThatCannotBeWrittenIsToldByItsName() throws Exception {
    Path inFile = Files.writeString(copies.resolve("note.txt"), "a file").resolve("b.db");
    StoreUnusableException failure =
        assertThrows(StoreUnusableException.class, () -> Backup.write(home, inFile));
    assertEquals("file-unusable", failure.problem().code());
    assertEquals(inFile.toString(), failure.problem().where());
  }

  private StoreUnusableException failure(Path from) {
    return assertThrows(StoreUnusableException.class, () -> Backup.write(from, backup));
  }

  private String refused(Path from) {
    return failure(from).problem().code();
  }

  private void execute(String sql) throws SQLException {
    try (Connection connection = DatabaseFile.connect(home.resolve(Database.FILE));
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private static Process writing(Path home) throws IOException {
    return new ProcessBuilder(
            ProcessHandle.current().info().command().orElse("java"),
            "-Xmx128m",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            StoreCrashTest.Writing.class.getName(),
            home.toString(),
            "0")
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }
}
