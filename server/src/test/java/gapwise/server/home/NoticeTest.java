package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.DamagedRecord;
import gapwise.store.Soundness;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What every page says of damage that was found when the home was opened. */
class NoticeTest {
  private static final DamagedRecord ONE =
      new DamagedRecord(4, "study alder, version 1", DamagedRecord.What.CHANGED);
  private static final DamagedRecord OTHER =
      new DamagedRecord(7, "study tarn, version 2", DamagedRecord.What.MISSING);

  private static Optional<Notice> notice(List<String> structure, List<DamagedRecord> records) {
    return Notice.ofDamage(new Soundness(9, 9, Optional.empty(), 0, structure, records));
  }

  @Test
  void nothingIsSaidOfASoundBase() {
    assertEquals(Optional.empty(), notice(List.of(), List.of()));
  }

  @Test
  void everyDamagedRecordIsNamedWithWhatToDo() {
    Notice notice = notice(List.of(), List.of(ONE, OTHER)).orElseThrow();
    assertEquals("Records are damaged.", notice.heading());
    assertTrue(notice.words().contains("study alder, version 1"), notice::words);
    assertTrue(notice.words().contains("study tarn, version 2"), notice::words);
    assertTrue(notice.words().contains("Put the last sound backup back"), notice::words);
    assertTrue(notice.words().contains("can also be imported again"), notice::words);
  }

  @Test
  void nothingIsToBeImportedIntoADamagedFile() {
    Notice notice = notice(List.of("page 7 is never used"), List.of(ONE)).orElseThrow();
    assertEquals("The database is damaged.", notice.heading());
    assertTrue(notice.words().contains("Import nothing now. Stop the server"), notice::words);
  }
}
