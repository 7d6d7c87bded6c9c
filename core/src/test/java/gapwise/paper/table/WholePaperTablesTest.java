package gapwise.paper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Box;
import gapwise.paper.Drawn;
import gapwise.paper.Page;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tables over pages, sideways, in a box drawn by hand, and where there is none. */
class WholePaperTablesTest extends DrawnTables {
  private static void patients(Drawn drawn, double y, int from, int to) throws IOException {
    double[] rights = {140, 240, 330};
    for (int i = from; i <= to; i++) {
      row(drawn, y + 14 * (i - from), rights, "" + i, "" + (20 + i), i + ".5", i % 3 + "");
    }
  }

  @Test
  void aTableThatGoesOnOverThePageWithItsHeadAgain() throws IOException {
    try (Drawn drawn = new Drawn()) {
      double[] rights = {140, 240, 330};
      prose(drawn, 60, 60, 95, 40);
      drawn.bold(60, 560, 9, "Table 5. The patients");
      row(drawn, 576, rights, "No.", "Age", "Gap", "Operations");
      patients(drawn, 590, 1, 12);
      drawn.page(595, 842);
      drawn.text(60, 60, 9, "Table 5. (continued)");
      row(drawn, 76, rights, "No.", "Age", "Gap", "Operations");
      patients(drawn, 90, 13, 20);
      prose(drawn, 60, 240, 95, 20);
      Grid grid = only(drawn);
      assertEquals(21, grid.rows().size(), grid.texts().toString());
      assertEquals(List.of("13", "33", "13.5", "1"), grid.texts().get(13));
      assertEquals(2, grid.parts().size());
      assertEquals(13, grid.parts().get(1).firstRow());
      assertEquals(2, grid.rows().get(13).get(0).page());
    }
  }

  @Test
  void aTableThatGoesOnWithoutAWord() throws IOException {
    try (Drawn drawn = new Drawn()) {
      double[] rights = {140, 240, 330};
      prose(drawn, 60, 60, 95, 40);
      drawn.bold(60, 560, 9, "Table 5. The patients");
      row(drawn, 576, rights, "No.", "Age", "Gap", "Operations");
      patients(drawn, 590, 1, 12);
      drawn.middle(297, 815, 8, "Invented for a test");
      drawn.page(595, 842);
      drawn.text(60, 30, 8, "Running head");
      patients(drawn, 70, 13, 20);
      prose(drawn, 60, 240, 95, 20);
      Grid grid = only(drawn);
      assertEquals(21, grid.rows().size(), grid.texts().toString());
      assertEquals(List.of("20", "40", "20.5", "2"), grid.texts().get(20));
    }
  }

  @Test
  void twoTablesOnTwoPagesStayTwo() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 560, 9, "Table 5. The patients");
      patients(drawn, 590, 1, 12);
      drawn.page(595, 842);
      drawn.bold(60, 60, 9, "Table 6. Others");
      patients(drawn, 80, 1, 8);
      assertEquals(2, Tables.across(pages(drawn)).size());
    }
  }

  @Test
  void aTablePrintedSideways() throws IOException {
    try (Drawn drawn = new Drawn()) {
      double[] y = {700, 560, 460, 360, 260};
      String[][] cells = {
        {"Outcome", "Frame", "Nail", "Plate", "Cage"},
        {"Patients", "20", "14", "9", "7"},
        {"Union", "18 (90)", "12 (86)", "8 (89)", "5 (71)"},
        {"Months", "9.5", "8.25", "10", "11"},
        {"Infection", "4", "1", "0", "2"}
      };
      for (int row = 0; row < cells.length; row++) {
        for (int column = 0; column < y.length; column++) {
          drawn.upwards(120 + 16 * row, y[column], 9, cells[row][column]);
        }
      }
      drawn.upwards(98, 700, 9, "Table 7. Outcomes of four methods");
      Grid grid = only(drawn);
      List<List<String>> expected = new ArrayList<>();
      for (String[] row : cells) {
        expected.add(List.of(row));
      }
      assertEquals(expected, grid.texts());
      Box cell = grid.rows().get(1).get(1).box().orElseThrow();
      assertTrue(cell.holds(134, 556), cell.toString());
      Grid boxed =
          Tables.in(pages(drawn(cells, y)).get(0), new Box(100, 200, 200, 710)).orElseThrow();
      assertEquals(expected, boxed.texts());
    }
  }

  private Drawn drawn(String[][] cells, double[] y) throws IOException {
    Drawn drawn = new Drawn();
    for (int row = 0; row < cells.length; row++) {
      for (int column = 0; column < y.length; column++) {
        drawn.upwards(120 + 16 * row, y[column], 9, cells[row][column]);
      }
    }
    return drawn;
  }

  @Test
  void aTableOnAPageTurnedByItsOwnSetting() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 140, 9, "Table 1. Before the operation");
      double[] rights = {260, 340, 430};
      row(drawn, 156, rights, "Variable", "Transport", "Graft", "p");
      row(drawn, 170, rights, "Patients in the first of all years", "24", "9", "");
      row(drawn, 184, rights, "Gap in cm", "7.25", "11.5", "0.04");
      row(drawn, 198, rights, "Infected, n (%)", "12 (50)", "1 (11)", "0.21");
      drawn.page().setRotation(90);
      Grid grid = only(drawn);
      assertEquals(List.of("Gap in cm", "7.25", "11.5", "0.04"), grid.texts().get(2));
    }
  }

  @Test
  void aDrawnBoxTakesOnlyWhatIsInIt() throws IOException {
    try (Drawn drawn = new Drawn()) {
      double[] rights = {140, 240, 330};
      row(drawn, 76, rights, "No.", "Age", "Gap", "Operations");
      patients(drawn, 90, 1, 5);
      drawn.text(400, 100, 9, "beside");
      Page page = pages(drawn).get(0);
      Grid grid = Tables.in(page, new Box(50, 66, 250, 134)).orElseThrow();
      assertEquals(
          List.of(
              List.of("No.", "Age", "Gap"),
              List.of("1", "21", "1.5"),
              List.of("2", "22", "2.5"),
              List.of("3", "23", "3.5"),
              List.of("4", "24", "4.5")),
          grid.texts());
      assertTrue(Tables.in(page, new Box(0, 700, 10, 710)).isEmpty());
    }
  }

  @Test
  void proseAloneHoldsNoTable() throws IOException {
    try (Drawn drawn = new Drawn()) {
      prose(drawn, 60, 60, 95, 20);
      drawn.text(60, 320, 9, "Table 2 lists all patients, and what became of them.");
      prose(drawn, 60, 334, 95, 20);
      assertEquals(List.of(), Tables.across(pages(drawn)));
    }
  }
}
