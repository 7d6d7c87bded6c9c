package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A home that lost records is told from a new one and from a backup that was put back. */
class HomeOpeningTest {
  private static final Clock CLOCK = Clock.systemUTC();

  @TempDir Path folder;
  private Path home;
  private Path file;

  @BeforeEach
  void name() {
    home = folder.resolve("home");
    file = home.resolve(Database.FILE);
  }

  @Test
  void aHomeThatIsNotThereIsMadeOnlyWhereThatIsMeant() {
    assertEquals("no-home", failure(Expected.A_HOME).problem().code());
    assertFalse(Files.exists(home));
    DocumentStore.open(home, CLOCK, Expected.ANYTHING).close();
    DocumentStore.open(home, CLOCK, Expected.A_HOME).close();
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aDatabaseThatIsGoneIsMissedAndNoneIsMade(boolean expected) throws IOException {
    write(1, 3);
    Files.delete(file);
    StoreUnusableException failure = failure(expected ? Expected.A_HOME : Expected.ANYTHING);
    assertEquals("store-missing", failure.problem().code());
    assertTrue(failure.getMessage().contains("held 3 changes"), failure::getMessage);
    assertFalse(Files.exists(file));
  }

  @Test
  void aDatabaseCutToNothingIsToldAndLeftSo() throws IOException {
    write(1, 3);
    Files.write(file, new byte[0]);
    assertEquals("store-emptied", failure(Expected.ANYTHING).problem().code());
    assertEquals(0, Files.size(file));
  }

  @Test
  void aDatabaseWithoutRecordsInThePlaceOfOneWithRecordsIsTold() throws IOException {
    write(1, 3);
    DocumentStore.open(folder.resolve("new"), CLOCK).close();
    replaceBy(folder.resolve("new").resolve(Database.FILE));
    assertEquals("store-emptied", failure(Expected.ANYTHING).problem().code());
  }

  @Test
  void whatTheIndexSawStandsInForANoteThatIsGone() throws IOException {
    write(1, 3);
    Files.delete(home.resolve(HomeMarker.FILE));
    Files.delete(file);
    assertEquals("store-missing", failure(Expected.ANYTHING.withChange(3)).problem().code());
    DocumentStore.open(home, CLOCK).close();
  }

  @Test
  void aHomeThatNeverHeldARecordMayLoseItsDatabase() throws IOException {
    DocumentStore.open(home, CLOCK).close();
    Files.delete(file);
    write(1, 1);
  }

  @Test
  void aLinkToADatabaseThatIsNotThereIsToldAsOne() throws IOException {
    Files.createDirectories(home);
    Files.createSymbolicLink(file, folder.resolve("disk/records.db"));
    StoreUnusableException failure = failure(Expected.ANYTHING);
    assertEquals("store-missing", failure.problem().code());
    assertTrue(failure.getMessage().contains("disk/records.db"), failure::getMessage);
  }

  @Test
  void aLogThatIsDeletedAfterAKillIsMissed() throws Exception {
    killWhileWriting();
    Path log = DatabaseFile.log(file);
    assertTrue(Files.size(log) > 0, "the kill left a log");
    Files.delete(log);
    StoreUnusableException failure = failure(Expected.ANYTHING);
    // With the log went the whole database, or all after what had been put into the file.
    assertTrue(
        List.of("store-behind", "store-emptied").contains(failure.problem().code()),
        failure::getMessage);
  }

  @Test
  void aKillAloneLosesNothingAndNothingIsTold() throws Exception {
    long acknowledged = killWhileWriting();
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(List.of(), store.notices());
      assertTrue(store.lastChange() >= 3 * (acknowledged + 1));
    }
  }

  @Test
  void anOlderFileInThePlaceOfTheDatabaseIsToldWithHowToGoOn() throws IOException {
    write(1, 2);
    Path older = Files.copy(file, folder.resolve("older.db"));
    write(3, 5);
    replaceBy(older);
    StoreUnusableException failure = failure(Expected.ANYTHING);
    assertEquals("store-behind", failure.problem().code());
    assertTrue(failure.getMessage().contains("ends at change 2"), failure::getMessage);
    assertTrue(failure.getMessage().contains("3 are lost"), failure::getMessage);
    assertTrue(
        failure.getMessage().endsWith("restore " + file + " --home " + home), failure::getMessage);
    Restore.of(file, home, CLOCK);
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(2, store.lastChange());
    }
  }

  @Test
  void anotherDatabaseOfTheSameLengthIsToldFromTheOneThatWasThere() throws IOException {
    write(1, 3);
    Path right = home;
    home = folder.resolve("other");
    write(4, 6);
    Path other = home.resolve(Database.FILE);
    home = right;
    replaceBy(other);
    assertEquals("store-other", failure(Expected.ANYTHING).problem().code());
  }

  @Test
  void aBackupPutBackByHandOpensAndSaysSoOnce() throws IOException {
    write(1, 2);
    Path backup = folder.resolve("b.db");
    Backup.write(home, backup);
    write(3, 5);
    replaceBy(backup);
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertTrue(store.wasPutBack());
      assertEquals(1, store.notices().size());
      assertTrue(
          store.notices().get(0).contains("go to change 2")
              && store.notices().get(0).contains("had been at change 5"),
          store.notices()::toString);
    }
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertFalse(store.wasPutBack());
      assertEquals(List.of(), store.notices());
    }
    write(6, 6);
  }

  @Test
  void aBackupPutIntoAFolderByHandIsAHome() throws IOException {
    write(1, 2);
    Path backup = folder.resolve("b.db");
    Backup.write(home, backup);
    home = Files.createDirectory(folder.resolve("fresh"));
    file = home.resolve(Database.FILE);
    Files.copy(backup, file);
    try (DocumentStore store = DocumentStore.open(home, CLOCK, Expected.A_HOME)) {
      assertEquals(2, store.lastChange());
    }
  }

  @Test
  void aBackupThatIsDamagedIsRefusedWhenItIsPutBackByHand() throws IOException {
    write(1, 5);
    Path backup = folder.resolve("b.db");
    Backup.write(home, backup);
    DamagedFile.change(backup, "words of 4 ", "words of 9 ");
    replaceBy(backup);
    StoreUnusableException failure = failure(Expected.ANYTHING);
    assertEquals("store-damaged", failure.problem().code());
    assertTrue(failure.getMessage().contains("study S4, version 1"), failure::getMessage);
  }

  @Test
  void aDamagedNoteIsSaidAndMadeAnew() throws IOException {
    write(1, 2);
    Path note = home.resolve(HomeMarker.FILE);
    Files.writeString(note, Files.readString(note).replace("change ", "chance "));
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertTrue(store.notices().get(0).contains("gapwise.home"), store.notices()::toString);
    }
    assertEquals(2, HomeMarker.read(home).orElseThrow().change());
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(List.of(), store.notices());
    }
  }

  @Test
  void theNoteFollowsEveryWrite() throws IOException {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      for (int number = 1; number < 4; number++) {
        store.write(List.of(Write.put("study", "S", "{\"n\":" + number + "}")), "ann", "test");
        assertEquals(number, HomeMarker.read(home).orElseThrow().change());
      }
    }
  }

  @Test
  void aRowThatIsGoneFromTheMiddleIsMissed() throws Exception {
    write(1, 5);
    try (Connection connection = DatabaseFile.connect(file);
        Statement statement = connection.createStatement()) {
      statement.execute("DROP TRIGGER document_version_is_never_deleted");
      statement.execute("DELETE FROM document_version WHERE change_number = 3");
    }
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      StoreUnusableException failure =
          assertThrows(StoreUnusableException.class, store.soundnessCheck()::requireComplete);
      assertEquals("store-damaged", failure.problem().code());
      assertTrue(failure.getMessage().contains("(change 3): it is missing"), failure::getMessage);
    }
  }

  private void write(int from, int to) {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      for (int number = from; number <= to; number++) {
        String json = "{\"n\":\"words of " + number + " \"}";
        store.write(List.of(Write.put("study", "S" + number, json)), "ann", "test");
      }
    }
  }

  private void replaceBy(Path other) throws IOException {
    Files.delete(file);
    Files.copy(other, file);
  }

  private StoreUnusableException failure(Expected expected) {
    return assertThrows(
        StoreUnusableException.class, () -> DocumentStore.open(home, CLOCK, expected));
  }

  /** The number of a write that the killed process had said was done. */
  private long killWhileWriting() throws IOException, InterruptedException, SQLException {
    Process process =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElse("java"),
                "-Xmx128m",
                "-cp",
                System.getProperty("java.class.path"),
                StoreCrashTest.Writing.class.getName(),
                home.toString(),
                "0")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    long last = 0;
    try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
      for (int count = 0; count < 10; count++) {
        last = Long.parseLong(said.readLine());
      }
      assertTrue(process.toHandle().destroyForcibly());
    }
    process.waitFor();
    return last;
  }
}
