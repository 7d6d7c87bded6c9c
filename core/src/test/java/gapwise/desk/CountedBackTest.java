package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.exchange.Template;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Percentages counted back; the arithmetic stands beside each. */
class CountedBackTest {
  private static Draft draft(String percent, String total) {
    Draft draft = DraftTest.complete();
    int row = draft.rows(Template.OUTCOMES).get(0).number();
    return draft
        .withCell(row, "events", "", Optional.empty())
        .withCell(row, "percent", percent, Optional.empty())
        .withCell(row, "total", total, Optional.empty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // 26/32 = 81.25, 25/32 = 78.1
        "81 | 32 | 26",
        // 161/200 = 80.5 rounds up to 81, 162/200 = 81, 163/200 = 81.5 is cut off to 81
        "81 | 200 | 161 162 163",
        // 25/26 = 96.15
        "96.2 | 26 | 25",
        "100 | 9 | 9",
        "0 | 9 | 0",
        // 2/3 = 66.67, printed with a comma
        "66,7 | 3 | 2",
        // nothing of 7 is 50 %
        "50 | 7 | "
      })
  void everyWholeNumberThatIsPrintedSoIsFound(String percent, String total, String counts) {
    List<Integer> wanted =
        counts == null
            ? List.of()
            : Arrays.stream(counts.split(" ")).map(Integer::valueOf).toList();
    List<CountedBack> found = CountedBack.of(draft(percent, total));
    assertEquals(wanted, found.isEmpty() ? List.of() : found.get(0).counts());
  }

  @Test
  void oneThatIsTakenIsMarkedAsCountedBack() {
    Draft draft = draft("81", "32");
    CountedBack one = CountedBack.of(draft).get(0);
    assertEquals("81.3", one.share(26));
    DraftRow row = one.taken(draft, 26).row(one.row()).orElseThrow();
    assertEquals("26", row.text("events"));
    assertEquals("yes", row.text("events_counted_back"));
    assertEquals(List.of(), CountedBack.of(one.taken(draft, 26)));
  }
}
