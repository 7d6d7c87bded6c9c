package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.Trail.Deed;
import gapwise.store.database.SqliteDatabase;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The trail is read newest first, and nothing of it can be changed. */
class TrailTest {
  private static final Instant NOW = Instant.parse("2026-03-01T08:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
  @TempDir Path home;
  StorePlace place;

  /** Where the records of one test are. */
  StorePlace newPlace(Path folder) {
    return StorePlace.of(folder);
  }

  @BeforeEach
  void begin() {
    place = newPlace(home);
  }

  final DocumentStore open() {
    return DocumentStore.open(place, CLOCK, Expected.ANYTHING);
  }

  private static Deed deed(String person, String subject) {
    return new Deed("write", person, "192.0.2.0", subject, "303");
  }

  @Test
  void entriesAreKeptOverAReopeningAndReadNewestFirstPageByPage() {
    try (DocumentStore store = open()) {
      for (int i = 1; i <= 5; i++) {
        store.trail().add(deed(i % 2 == 0 ? "Bo" : "Ann", "route " + i));
      }
    }
    try (DocumentStore store = open()) {
      List<Trail.Entry> first = store.trail().before("", Long.MAX_VALUE, 2);
      assertEquals(List.of(5L, 4L), first.stream().map(Trail.Entry::number).toList());
      assertEquals(new Trail.Entry(5, NOW, deed("Ann", "route 5")), first.get(0));
      List<Trail.Entry> next = store.trail().before("", 4, 2);
      assertEquals(List.of(3L, 2L), next.stream().map(Trail.Entry::number).toList());
      List<Trail.Entry> ofBo = store.trail().before("Bo", Long.MAX_VALUE, 9);
      assertEquals(List.of(4L, 2L), ofBo.stream().map(Trail.Entry::number).toList());
      List<Long> all = new ArrayList<>();
      store.trail().forEach("", entry -> all.add(entry.number()));
      assertEquals(List.of(5L, 4L, 3L, 2L, 1L), all);
      assertEquals(0, store.lastChange(), "the trail is no change of the records");
    }
  }

  /** Statements that the database is to refuse, as it words them. */
  List<String> changes() {
    return List.of(
        "UPDATE trail_entry SET person = 'other'",
        "UPDATE trail_entry SET outcome = '' WHERE entry_number = 1",
        "DELETE FROM trail_entry",
        "DELETE FROM trail_entry WHERE entry_number = 2",
        "INSERT OR REPLACE INTO trail_entry VALUES (1, '', 'write', '', '', '', '')",
        "INSERT INTO trail_entry VALUES (9, '', 'write', '', '', '', '')");
  }

  /** What the database says when it refuses one. */
  String refusal() {
    return "SQLITE_CONSTRAINT_TRIGGER";
  }

  Connection behind() throws SQLException {
    return SqliteDatabase.ofHome(home).connect();
  }

  @Test
  void theDatabaseItselfRefusesToChangeTheTrail() throws SQLException {
    try (DocumentStore store = open()) {
      store.trail().add(deed("Ann", "one"));
      store.trail().add(deed("Bo", "two"));
      for (String statement : changes()) {
        try (Connection connection = behind();
            Statement sql = connection.createStatement()) {
          SQLException refused =
              assertThrows(SQLException.class, () -> sql.executeUpdate(statement), statement);
          assertTrue(refused.getMessage().contains(refusal()), refused.getMessage());
        }
      }
      assertEquals(
          List.of(deed("Bo", "two"), deed("Ann", "one")),
          store.trail().before("", Long.MAX_VALUE, 9).stream().map(Trail.Entry::deed).toList());
    }
  }

  @Test
  void whatIsTooLongIsCutAndNeverLeftOut() {
    Deed deed = new Deed("write", "Ann", "", "x".repeat(5000), "");
    assertEquals(300, deed.subject().length());
    assertThrows(IllegalArgumentException.class, () -> new Deed("", "Ann", "", "", ""));
  }
}
