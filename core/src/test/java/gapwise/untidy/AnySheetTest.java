package gapwise.untidy;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.printed.Printed;
import gapwise.printed.Proposed;
import gapwise.problem.Problems;
import gapwise.table.TableFile;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever stands in a sheet, reading it ends with an answer, and every question says why. */
class AnySheetTest {
  private static final String[] PIECES = {
    "Study", "n", "Union", "SD", "mean ± SD", "(cm)", "12", "7.5 ± 2.5", "3-5", "20 (87%)", "\"",
        "-",
    "NR", "", "", "Total", "bone transport", "Group A", "± ±", "((", "1,234", "0/0", "5/0", "1e9",
    "99999999999999999999", "11. Dez", "2020-02-30", "% %", "n =", "= 5", "P", "Age", "🙂", "a;b",
        "\t"
  };

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void endsWithAnAnswer(long seed) {
    Random random = new Random(seed);
    List<GridCell> cells = new ArrayList<>();
    for (int row = 0; row < 15; row++) {
      for (int column = 0; column < 8; column++) {
        String text = PIECES[random.nextInt(PIECES.length)];
        cells.add(GridCell.plain(row, column, text, Cells.reference(row, column)));
      }
    }
    List<Grid.Merged> merged = List.of(new Grid.Merged(random.nextInt(9), random.nextInt(5), 9, 7));
    Preview preview = UntidySheets.read(List.of(new Grid("any", cells, merged)), List.of());
    for (FoundField field : preview.fields()) {
      boolean told =
          field.value().state() == Proposed.State.TAKEN || field.value().why().endsWith(".");
      assertTrue(told, field.toString());
    }
    TemplateRows.of(preview.fields());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "((((((((((",
        "± ± ± ±",
        "1 2 3 4 5 6 7",
        "n = = 5",
        "%%",
        "5/5/5/5",
        "a",
        "-5--6",
        "9999999999999999999999999999/1"
      })
  void readsAnyText(String text) {
    Printed.read(text);
    Printed.read(text.repeat(200));
  }

  @Test
  void aLargeSheetIsReadInReasonableTime() {
    StringBuilder text =
        new StringBuilder("Case,Age,Sex,Defect (cm),Union,Remarks of the reader\n");
    for (int row = 1; row <= 5_000; row++) {
      text.append(row)
          .append(",40,m,6.5,yes,seen again at the clinic number ")
          .append(row)
          .append('\n');
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    // Common practice, no source: nobody waits longer for a file of patients.
    Preview preview =
        assertTimeoutPreemptively(
            Duration.ofSeconds(60),
            () -> UntidySheets.read(TableFile.of("large.csv", bytes), List.of(), new Problems()));
    assertTrue(preview.taken().size() >= 25_000, String.valueOf(preview.taken().size()));
  }
}
