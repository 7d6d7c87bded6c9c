package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A look at a store that is open, and what it tells. */
class SoundnessCheckTest {
  @TempDir Path home;
  private DocumentStore store;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, Clock.systemUTC());
    store.writeAll(
        IntStream.range(0, 50).mapToObj(n -> Write.put("study", "S" + n, "{}")).iterator(),
        "ann",
        "import");
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aLookWhileAWriteIsUnderWaySeesWhatWasThereBefore() {
    List<Soundness> seen = new java.util.ArrayList<>();
    store.writeAll(
        Stream.of(Write.put("study", "late", "{}"))
            .peek(write -> seen.add(store.soundnessCheck().run().orElseThrow()))
            .iterator(),
        "ann",
        "while it is looked at");
    assertTrue(seen.get(0).isSound());
    assertEquals(50, seen.get(0).lastChange());
    assertEquals("", seen.get(0).told());
  }

  @Test
  void aLookThatIsCancelledTellsNothing() {
    SoundnessCheck check = store.soundnessCheck();
    check.cancel();
    assertEquals(Optional.empty(), check.run());
    assertTrue(store.soundnessCheck().run().orElseThrow().isSound(), "others look all the same");
  }

  @Test
  void manyDamagedRecordsAreCountedAndSomeOfThemNamed() {
    List<DamagedRecord> damaged =
        LongStream.rangeClosed(1, 33)
            .mapToObj(n -> new DamagedRecord(n, "study S" + n, DamagedRecord.What.CHANGED))
            .toList();
    Soundness found = new Soundness(33, 33, Optional.empty(), 0, List.of(), damaged);
    assertFalse(found.isSound());
    assertTrue(found.told().startsWith("33 records are damaged: study S1 (change 1): its content"));
    assertTrue(found.told().contains("study S20 (change 20)"), found::told);
    assertFalse(found.told().contains("study S21"), found::told);
    assertTrue(found.told().endsWith("; and 13 more."), found::told);
  }

  @Test
  void aDamagedFileWithSoundRecordsSaysThatTheyAre() {
    Soundness found =
        new Soundness(50, 50, Optional.empty(), 0, List.of("Page 9: never used"), List.of());
    assertEquals(
        "The file is damaged (Page 9: never used). Each of the 50 records in it could be read as"
            + " it was written.",
        found.told());
  }
}
