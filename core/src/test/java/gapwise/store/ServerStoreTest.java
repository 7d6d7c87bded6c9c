package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.WrongInputException;
import gapwise.store.DamagedRecord.What;
import gapwise.store.database.DatabaseAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What only a database of a server can suffer or do. */
class ServerStoreTest {
  private static final String TRIGGERS_OFF = "ALTER TABLE document_version DISABLE TRIGGER USER";

  @TempDir Path folder;
  private StorePlace place;

  @BeforeEach
  void newPlace() {
    place = RealServer.newPlace(folder.resolve("one"));
  }

  private static DocumentStore open(StorePlace place) {
    return DocumentStore.open(place, Clock.systemUTC(), Expected.ANYTHING);
  }

  private static void put(DocumentStore store, String key) {
    assertTrue(
        store.write(List.of(Write.put("study", key, "{}")), "ann", "test").written().isPresent());
  }

  private String refusal() {
    return assertThrows(StoreUnusableException.class, () -> open(place).close()).problem().code();
  }

  private void execute(String statement) {
    RealServer.execute(place.database().orElseThrow(), statement);
  }

  @Test
  void twoHomesShareOneLogAndEachSeesWhatTheOtherWrote() {
    StorePlace two = new StorePlace(folder.resolve("two"), place.database());
    try (DocumentStore here = open(place);
        DocumentStore there = open(two)) {
      put(here, "A");
      assertEquals(1, there.lastChange());
      put(there, "B");
      List<String> keys = new ArrayList<>();
      here.changesAfter(0, version -> keys.add(version.id().key()));
      assertEquals(List.of("A", "B"), keys);
      assertEquals(
          1,
          there
              .write(List.of(Write.put("study", "A", "{}").expecting(0)), "bo", "late")
              .conflicts()
              .size());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE document_version SET reason = 'x'",
        "DELETE FROM document_version",
        "TRUNCATE document_version",
        "INSERT INTO document_version SELECT 3, kind, 'C', 1, written_at, 'x', 'x', '{}', NULL"
            + " FROM document_version",
        "INSERT INTO document_version SELECT 2, kind, document_key, 3, written_at, 'x', 'x', '{}',"
            + " NULL FROM document_version"
      })
  void historyIsOnlyEverAddedToWhoeverAsks(String statement) {
    try (DocumentStore store = open(place)) {
      put(store, "A");
      assertThrows(IllegalStateException.class, () -> execute(statement));
      assertEquals(1, store.lastChange());
      assertEquals("test", store.latest("study", "A").orElseThrow().why());
    }
  }

  @Test
  void whatWasChangedBehindTheProgramIsFoundByNameAndRefused() {
    try (DocumentStore store = open(place)) {
      put(store, "A");
      put(store, "B");
      put(store, "C");
      execute(TRIGGERS_OFF);
      execute("UPDATE document_version SET content = '{\"n\":7}' WHERE document_key = 'B'");
      Soundness found = store.soundnessCheck().run().orElseThrow();
      assertEquals(
          List.of(new DamagedRecord(2, "study B, version 1", What.CHANGED)), found.records());
      DocumentVersion damaged = store.latest("study", "B").orElseThrow();
      assertThrows(RecordDamagedException.class, damaged::json);
      assertThrows(StoreUnusableException.class, () -> Backup.write(place, folder.resolve("b.db")));
      assertFalse(Files.exists(folder.resolve("b.db")));
    }
  }

  @Test
  void anOlderCopyOfTheDatabaseIsRefusedAndSoIsAnEmptiedOne() {
    try (DocumentStore store = open(place)) {
      put(store, "A");
      put(store, "B");
    }
    execute(TRIGGERS_OFF);
    execute("DELETE FROM document_version WHERE change_number = 2");
    assertEquals("store-behind", refusal());
    execute("DELETE FROM document_version");
    assertEquals("store-emptied", refusal());
  }

  @Test
  void anotherDatabaseUnderTheSameHomeIsRefused() {
    try (DocumentStore store = open(place)) {
      put(store, "A");
    }
    place = new StorePlace(place.home(), Optional.of(RealServer.newDatabase()));
    assertEquals("store-emptied", refusal());
    try (DocumentStore store = open(new StorePlace(folder.resolve("other"), place.database()))) {
      put(store, "A");
    }
    assertEquals("store-other", refusal());
  }

  @Test
  void whatIsNoBaseOfThisProgramIsRefusedAndNotTouched() {
    assertEquals(
        "no-home",
        assertThrows(
                StoreUnusableException.class,
                () -> DocumentStore.open(place, Clock.systemUTC(), Expected.A_HOME))
            .problem()
            .code());
    execute("CREATE TABLE cookies (name TEXT)");
    assertEquals("store-foreign", refusal());
    execute("DROP TABLE cookies");
    open(place).close();
    execute(
        "INSERT INTO flyway_schema_history SELECT 9, '99', 'later', 'SQL', 'V99.sql', 1, 'x', now(),"
            + " 1, true");
    assertEquals("store-newer", refusal());
  }

  @Test
  void aServerThatCannotBeUsedIsToldInWordsWithoutThePassword() {
    String url = place.database().orElseThrow().url();
    place = place(url.replaceFirst("base\\d+", "nothing_of_this_name"), "secret-word");
    assertTold("no-database");
    place = place(url.replaceFirst(":\\d+/", ":1/"), "secret-word");
    assertTold("database-away");
    place = place(url.replaceFirst("user=postgres", "user=nobody"), "secret-word");
    assertTold("database-refused");
  }

  private void assertTold(String code) {
    StoreUnusableException told =
        assertThrows(StoreUnusableException.class, () -> open(place).close());
    assertEquals(code, told.problem().code());
    for (Throwable cause = told; cause != null; cause = cause.getCause()) {
      assertFalse(String.valueOf(cause.getMessage()).contains("secret-word"));
    }
  }

  private StorePlace place(String url, String password) {
    return new StorePlace(
        folder.resolve("one"), Optional.of(DatabaseAddress.of(url, Optional.of(password))));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "mysql://x/y",
        "jdbc:postgresql://h:many/y",
        "jdbc:postgresql://h/y?user=u&password=secret-word",
        "jdbc:postgresql://h/y?sslpassword=secret-word"
      })
  void anAddressThatIsNoneOrHoldsAPasswordIsRefusedWithoutRepeatingIt(String url) {
    WrongInputException refused =
        assertThrows(WrongInputException.class, () -> DatabaseAddress.of(url, Optional.empty()));
    assertFalse(refused.problems().get(0).line().contains("secret-word"));
  }

  @Test
  void connectionsThatTheServerEndedAreOpenedAnew() {
    try (DocumentStore store = open(place)) {
      put(store, "A");
      assertEquals(1, store.lastChange());
      execute(
          "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
              + " WHERE datname = current_database() AND pid <> pg_backend_pid()");
      assertEquals(1, store.lastChange());
      put(store, "B");
      assertEquals(2, store.lastChange());
    }
  }

  @Test
  void aConnectionLostInTheMiddleOfAWriteLeavesNothingAndTheNextOneGoes() {
    try (DocumentStore store = open(place)) {
      put(store, "A");
      List<Write> writes = List.of(Write.put("study", "B", "{}"), Write.put("study", "C", "{}"));
      var cutting =
          writes.stream()
              .peek(
                  write -> {
                    if (write.id().key().equals("C")) {
                      execute(
                          "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
                              + " WHERE datname = current_database() AND pid <> pg_backend_pid()");
                    }
                  })
              .iterator();
      assertEquals(
          "database-away",
          assertThrows(
                  StoreUnusableException.class, () -> store.writeAll(cutting, "ann", "cut off"))
              .problem()
              .code());
      assertEquals(1, store.lastChange());
      put(store, "D");
      assertEquals(2, store.lastChange());
    }
  }

  @Test
  void aConnectionLostWhileCommittingIsToldAsNotKnownAndCanBeLookedUp() {
    try (DocumentStore store = open(place)) {
      put(store, "A");
      execute(
          "CREATE FUNCTION cut() RETURNS trigger LANGUAGE plpgsql AS"
              + " $$ BEGIN PERFORM pg_terminate_backend(pg_backend_pid()); RETURN NULL; END $$");
      execute(
          "CREATE CONSTRAINT TRIGGER cut AFTER INSERT ON document_version"
              + " DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION cut()");
      StoreUnusableException told =
          assertThrows(StoreUnusableException.class, () -> put(store, "B"));
      assertEquals("store-unknown", told.problem().code());
      assertEquals(Optional.empty(), store.latest("study", "B"));
      execute("DROP TRIGGER cut ON document_version");
      put(store, "C");
      assertEquals(2, store.lastChange());
    }
  }

  @Test
  void someWorkIsDoneByOneProcessAtATime() {
    StorePlace two = new StorePlace(folder.resolve("two"), place.database());
    try (DocumentStore here = open(place);
        DocumentStore there = open(two)) {
      List<Boolean> second = new ArrayList<>();
      assertTrue(here.doAlone("counting", () -> second.add(there.doAlone("counting", () -> {}))));
      assertEquals(List.of(false), second);
      assertTrue(there.doAlone("counting", () -> {}));
    }
  }

  @Test
  void aCharacterThatTheServerCannotKeepIsToldAndNothingIsWritten() {
    try (DocumentStore store = open(place)) {
      assertEquals(
          "text-unwritable",
          assertThrows(
                  StoreUnusableException.class,
                  () -> store.write(List.of(Write.put("study", "A\u0000B", "{}")), "ann", "a zero"))
              .problem()
              .code());
      assertEquals(0, store.lastChange());
    }
  }
}
