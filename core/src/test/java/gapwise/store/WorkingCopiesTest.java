package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people are at work on, beside the records. */
class WorkingCopiesTest {
  @TempDir Path home;
  private StorePlace place;
  private DocumentStore store;

  /** Where the records of one test are. */
  StorePlace newPlace(Path folder) {
    return StorePlace.of(folder);
  }

  @BeforeEach
  void begin() {
    place = newPlace(home);
    open();
  }

  private void open() {
    store = DocumentStore.open(place, Clock.systemUTC(), Expected.ANYTHING);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aCopyIsKeptOverAReopeningAndIsNoChangeOfTheRecords() {
    assertEquals(OptionalInt.of(1), store.workingCopies().keep("draft", "a", "{}", "ann", 0));
    assertEquals(OptionalInt.of(2), store.workingCopies().keep("draft", "a", "[1]", "bob", 1));
    store.close();
    open();
    WorkingCopy copy = store.workingCopies().find("draft", "a").orElseThrow();
    assertEquals("[1]", copy.json());
    assertEquals("bob", copy.who());
    assertEquals(2, copy.version());
    assertEquals(0, store.lastChange());
  }

  @Test
  void whoeverHasNotSeenTheLatestKeepsNothing() {
    store.workingCopies().keep("draft", "a", "{}", "ann", 0);
    assertEquals(OptionalInt.empty(), store.workingCopies().keep("draft", "a", "[1]", "bob", 0));
    assertEquals(OptionalInt.empty(), store.workingCopies().keep("draft", "a", "[1]", "bob", 2));
    assertEquals(OptionalInt.empty(), store.workingCopies().keep("draft", "b", "[1]", "bob", 1));
    assertEquals("{}", store.workingCopies().find("draft", "a").orElseThrow().json());
  }

  @Test
  void copiesOfAKindAreListedAndEnded() {
    store.workingCopies().keep("draft", "a", "{}", "ann", 0);
    store.workingCopies().keep("draft", "b", "{}", "ann", 0);
    store.workingCopies().keep("mapping", "c", "{}", "ann", 0);
    List<String> keys = new ArrayList<>();
    store.workingCopies().forEach("draft", copy -> keys.add(copy.key()));
    assertEquals(List.of("a", "b"), keys.stream().sorted().toList());
    assertTrue(store.workingCopies().drop("draft", "a"));
    assertFalse(store.workingCopies().drop("draft", "a"));
    assertEquals(Optional.empty(), store.workingCopies().find("draft", "a"));
  }
}
