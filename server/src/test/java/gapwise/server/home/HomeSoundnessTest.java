package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.testing.DamagedDatabase;
import gapwise.server.testing.Invented;
import gapwise.store.DocumentStore;
import gapwise.store.RecordDamagedException;
import gapwise.store.Soundness;
import gapwise.store.StoreUnusableException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the opening of a home finds, says, and lets people do. */
class HomeSoundnessTest {
  private static final Clock CLOCK = Clock.systemUTC();
  @TempDir private Path folder;
  private Path home;
  private List<Study> studies;
  private Study damaged;

  @BeforeEach
  void fill() {
    home = folder.resolve("home");
    studies = Invented.studies();
    damaged = studies.get(3);
    try (Home open = Home.open(home, CLOCK)) {
      open.base().saveAll(studies.iterator(), "reviewer", "for a test", List.of());
    }
  }

  @Test
  void aSoundHomeIsLookedAtBeforeItIsOpen() {
    try (Home open = Home.open(home, CLOCK)) {
      Soundness found = open.soundness().orElseThrow();
      assertTrue(found.isSound());
      assertEquals(17, found.versions());
      assertEquals(0, found.withoutChecksum());
    }
  }

  @Test
  void aDamagedRecordIsToldAndRefusedAndAllOthersAreThere() throws Exception {
    damageOneRecord();
    try (Home open = Home.open(home, CLOCK)) {
      Soundness found = open.soundness().orElseThrow();
      assertEquals(1, found.records().size());
      assertTrue(found.told().contains("study " + damaged.id() + ", version 1"), found::told);
      RecordDamagedException refused =
          assertThrows(RecordDamagedException.class, () -> study(open, damaged.id()));
      assertTrue(refused.problem().where().contains(damaged.id()), refused::getMessage);
      for (Study other : studies) {
        if (!other.id().equals(damaged.id())) {
          assertEquals(Optional.of(other), study(open, other.id()));
        }
      }
    }
  }

  @Test
  void anIndexBuiltAnewLeavesADamagedRecordOutAndTheOthersIn() throws Exception {
    damageOneRecord();
    try (Home open = Home.open(home, CLOCK)) {
      open.reindex();
      assertEquals(15, studiesFound(open));
    }
  }

  @Test
  void importingADamagedStudyAgainMendsIt() throws Exception {
    damageOneRecord();
    try (Home open = Home.open(home, CLOCK)) {
      assertEquals(
          1,
          open.base()
              .saveAll(studies.iterator(), "reviewer", "from the paper again", List.of())
              .saved());
      assertEquals(Optional.of(damaged), study(open, damaged.id()));
      open.reindex();
      assertEquals(16, studiesFound(open));
    }
  }

  @Test
  void aFileThatIsDamagedAsSuchIsRefused() throws Exception {
    DamagedDatabase.noiseWhere(home, content());
    StoreUnusableException refused =
        assertThrows(StoreUnusableException.class, () -> Home.open(home, CLOCK));
    assertEquals("store-damaged", refused.problem().code());
    assertTrue(refused.getMessage().contains("The file is damaged"), refused::getMessage);
  }

  @Test
  void aLargeHomeIsLookedAtInTheBackground() throws Exception {
    damageOneRecord();
    try (DocumentStore store = DocumentStore.open(home, CLOCK);
        HomeSoundness soundness = HomeSoundness.of(store, 0)) {
      assertTrue(soundness.await(Duration.ofSeconds(60)), "it comes to an end");
      assertEquals(1, soundness.found().orElseThrow().records().size());
    }
  }

  @Test
  void aBackupPutBackHasItsIndexBuiltAnewEvenAtTheSameChange() throws Exception {
    Path backup = folder.resolve("b.db");
    gapwise.store.Backup.write(home, backup);
    damageOneRecord();
    try (Home open = Home.open(home, CLOCK)) {
      open.reindex();
      assertEquals(15, studiesFound(open));
    }
    Files.delete(home.resolve("gapwise.db"));
    Files.copy(backup, home.resolve("gapwise.db"));
    try (Home open = Home.open(home, CLOCK)) {
      assertEquals(16, studiesFound(open));
    }
  }

  @Test
  void anEmptyDatabaseUnderAFullIndexIsToldEvenWithoutTheNote() throws Exception {
    Files.delete(home.resolve("gapwise.home"));
    Files.delete(home.resolve("gapwise.db"));
    StoreUnusableException refused =
        assertThrows(StoreUnusableException.class, () -> Home.open(home, CLOCK));
    assertEquals("store-missing", refused.problem().code());
    assertTrue(refused.getMessage().contains("held 17 changes"), refused::getMessage);
    assertFalse(Files.exists(home.resolve("gapwise.db")));
  }

  /** Words that stand in the content of one study alone. */
  private String content() {
    return damaged.id() + "\",\"citation\"";
  }

  private void damageOneRecord() throws Exception {
    DamagedDatabase.changeLetterIn(home, content());
  }

  private static Optional<Study> study(Home open, String id) {
    try (Hold hold = open.hold()) {
      return hold.evidence().study(id);
    }
  }

  private static int studiesFound(Home open) {
    try (Hold hold = open.hold()) {
      return hold.evidence()
          .search()
          .search(SearchRequest.EVERYTHING, StudySearch.Order.TITLE, 0, 100)
          .studies();
    }
  }
}
