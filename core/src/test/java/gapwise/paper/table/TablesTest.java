package gapwise.paper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.paper.Box;
import gapwise.paper.Drawn;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tables on one page against the cells that were drawn. */
class TablesTest extends DrawnTables {
  @Test
  void rightAlignedNumbersWithoutAnyRule() throws IOException {
    try (Drawn drawn = new Drawn()) {
      prose(drawn, 60, 60, 95, 5);
      drawn.bold(60, 140, 9, "Table 1. Before the operation");
      double[] rights = {260, 340, 430};
      row(drawn, 156, rights, "Variable", "Transport", "Graft", "p");
      row(drawn, 170, rights, "Patients", "24", "9", "");
      row(drawn, 184, rights, "Gap in cm", "7.25", "11.5", "0.04");
      row(drawn, 198, rights, "Infected, n (%)", "12 (50)", "1 (11)", "0.21");
      prose(drawn, 60, 240, 95, 8);
      Grid grid = only(drawn);
      assertEquals(
          List.of(
              List.of("Variable", "Transport", "Graft", "p"),
              List.of("Patients", "24", "9", ""),
              List.of("Gap in cm", "7.25", "11.5", "0.04"),
              List.of("Infected, n (%)", "12 (50)", "1 (11)", "0.21")),
          grid.texts());
      assertEquals(1, grid.headerRows());
      assertEquals("Table 1. Before the operation", grid.caption());
      Box cell = grid.rows().get(2).get(1).box().orElseThrow();
      assertEquals(260, cell.right(), 1);
      assertEquals(184 - 0.74 * 9, cell.top(), 1);
    }
  }

  @Test
  void headsThatSpanColumnsBetweenRules() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 140, 9, "Table 4. Results");
      drawn.line(60, 146, 500, 146);
      drawn.middle(240, 158, 9, "Ring frame");
      drawn.middle(400, 158, 9, "Free fibula");
      drawn.line(190, 162, 290, 162);
      drawn.line(350, 162, 450, 162);
      double[] middles = {210, 270, 370, 430};
      String[][] rows = {
        {"", "n", "mean (SD)", "n", "mean (SD)"},
        {"Weeks to union", "31", "40 (9)", "17", "33 (12)"},
        {"Weeks in hospital", "30", "6 (2)", "17", "8 (3)"}
      };
      for (int i = 0; i < rows.length; i++) {
        double y = 174 + 15 * i;
        drawn.text(60, y, 9, rows[i][0].isEmpty() ? " " : rows[i][0]);
        for (int j = 0; j < 4; j++) {
          drawn.middle(middles[j], y, 9, rows[i][j + 1]);
        }
      }
      drawn.line(60, 178, 500, 178);
      drawn.line(60, 210, 500, 210);
      Grid grid = only(drawn);
      assertEquals(List.of("", "Ring frame", "", "Free fibula", ""), grid.texts().get(0));
      assertEquals(2, grid.rows().get(0).get(1).columns());
      assertEquals(2, grid.rows().get(0).get(3).columns());
      assertEquals(List.of("", "n", "mean (SD)", "n", "mean (SD)"), grid.texts().get(1));
      assertEquals(List.of("Weeks to union", "31", "40 (9)", "17", "33 (12)"), grid.texts().get(2));
      assertEquals(2, grid.headerRows());
      assertEquals(4, grid.rows().size());
    }
  }

  @Test
  void cellsInAFullGridOfRules() throws IOException {
    try (Drawn drawn = new Drawn()) {
      double[] x = {60, 120, 210, 320, 420};
      double[] y = {100, 120, 156, 180, 204};
      for (double level : y) {
        drawn.line(60, level, 420, level);
      }
      for (double upright : x) {
        drawn.line(upright, 100, upright, 204);
      }
      String[][] cells = {
        {"Case", "Bone", "Treatment", "Healed"},
        {"1", "tibia", "transport, later", "yes"},
        {"2", "femur", "nail", "no"},
        {"3", "tibia", "graft", "yes"}
      };
      for (int row = 0; row < 4; row++) {
        for (int column = 0; column < 4; column++) {
          drawn.text(x[column] + 4, y[row] + 13, 9, cells[row][column]);
        }
      }
      drawn.text(214, 145, 9, "plate and graft");
      Grid grid = only(drawn);
      assertEquals(
          List.of(
              List.of("Case", "Bone", "Treatment", "Healed"),
              List.of("1", "tibia", "transport, later plate and graft", "yes"),
              List.of("2", "femur", "nail", "no"),
              List.of("3", "tibia", "graft", "yes")),
          grid.texts());
    }
  }

  @Test
  void labelsOnTwoLinesWithoutRules() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 140, 9, "Table 2: Complications");
      double[] rights = {260, 340};
      row(drawn, 156, rights, "Complication", "Early", "Late");
      row(drawn, 174, rights, "Infection around the", "3", "12");
      drawn.text(60, 184, 9, "pins of the frame");
      row(drawn, 202, rights, "Refracture", "0", "2");
      row(drawn, 220, rights, "Nerve hurt by the", "1", "0");
      drawn.text(60, 230, 9, "first operation");
      row(drawn, 248, rights, "Amputation", "0", "1");
      Grid grid = only(drawn);
      assertEquals(
          List.of(
              List.of("Complication", "Early", "Late"),
              List.of("Infection around the pins of the frame", "3", "12"),
              List.of("Refracture", "0", "2"),
              List.of("Nerve hurt by the first operation", "1", "0"),
              List.of("Amputation", "0", "1")),
          grid.texts());
    }
  }

  @Test
  void groupLabelsInTheBodyStayRowsOfTheirOwn() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 140, 9, "Table 2. Outcomes");
      double[] rights = {260, 340};
      row(drawn, 156, rights, "Outcome", "A", "B");
      row(drawn, 170, rights, "Bone", "", "");
      row(drawn, 184, rights, "United", "20", "11");
      row(drawn, 198, rights, "Not united", "4", "3");
      row(drawn, 212, rights, "Function", "", "");
      row(drawn, 226, rights, "Good", "18", "9");
      Grid grid = only(drawn);
      assertEquals(List.of("Bone", "", ""), grid.texts().get(1));
      assertEquals(List.of("Function", "", ""), grid.texts().get(4));
      assertEquals(6, grid.rows().size());
    }
  }

  @Test
  void aTableInOneOfTwoColumns() throws IOException {
    try (Drawn drawn = new Drawn()) {
      prose(drawn, 50, 60, 55, 50);
      prose(drawn, 310, 60, 55, 10);
      drawn.bold(310, 200, 9, "Table 3. Patients");
      String[][] cells = {
        {"", "All", "Infected"}, {"Age", "41", "44"}, {"Men", "19", "7"}, {"Smokers", "8", "5"}
      };
      for (int i = 0; i < cells.length; i++) {
        drawn.text(310, 216 + 14 * i, 9, cells[i][0].isEmpty() ? " " : cells[i][0]);
        drawn.middle(440, 216 + 14 * i, 9, cells[i][1]);
        drawn.middle(510, 216 + 14 * i, 9, cells[i][2]);
      }
      prose(drawn, 310, 290, 55, 28);
      Grid grid = only(drawn);
      assertEquals(
          List.of(
              List.of("", "All", "Infected"),
              List.of("Age", "41", "44"),
              List.of("Men", "19", "7"),
              List.of("Smokers", "8", "5")),
          grid.texts());
    }
  }

  @Test
  void aTableOverBothColumnsBetweenRules() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(50, 60, 9, "Table 3. Single patients");
      drawn.line(50, 66, 560, 66);
      drawn.line(50, 82, 560, 82);
      double[] x = {50, 100, 180, 260, 400, 500};
      String[][] cells = {
        {"No.", "Age", "Bone", "Gap (cm)", "Union", "Walks"},
        {"1", "23", "tibia", "4.5", "7 months", "yes"},
        {"2", "61", "femur", "12", "none", "no"},
        {"3", "35", "tibia", "6\u20138", "11 months", "yes"}
      };
      for (int i = 0; i < cells.length; i++) {
        for (int j = 0; j < x.length; j++) {
          drawn.text(x[j], 77 + 15 * i, 9, cells[i][j]);
        }
      }
      drawn.line(50, 128, 560, 128);
      prose(drawn, 50, 160, 55, 40);
      prose(drawn, 310, 160, 55, 40);
      Grid grid = only(drawn);
      List<List<String>> expected = new ArrayList<>();
      for (String[] row : cells) {
        expected.add(List.of(row));
      }
      assertEquals(expected, grid.texts());
    }
  }

  @Test
  void aTableOverBothColumnsWithoutRules() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(50, 60, 9, "Table 3. Single patients");
      double[] x = {50, 100, 180, 260, 400, 500};
      String[][] cells = {
        {"No.", "Age", "Bone", "Gap (cm)", "Union", "Walks"},
        {"1", "23", "tibia", "4.5", "7 months", "yes"},
        {"2", "61", "femur", "12", "none", "no"},
        {"3", "35", "tibia", "6\u20138", "11 months", "yes"}
      };
      for (int i = 0; i < cells.length; i++) {
        for (int j = 0; j < x.length; j++) {
          drawn.text(x[j], 77 + 15 * i, 9, cells[i][j]);
        }
      }
      prose(drawn, 50, 160, 55, 40);
      prose(drawn, 310, 160, 55, 40);
      Grid grid = only(drawn);
      List<List<String>> expected = new ArrayList<>();
      for (String[] row : cells) {
        expected.add(List.of(row));
      }
      assertEquals(expected, grid.texts());
    }
  }

  @Test
  void raisedMarksStandApartAndFootnotesAreNoRows() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 140, 9, "Table 1. Patients");
      drawn.line(60, 146, 340, 146);
      double[] rights = {260, 340};
      row(drawn, 157, rights, "Patient", "Gap, mm", "Months");
      drawn.line(60, 161, 340, 161);
      row(drawn, 173, rights, "1", "47", "9");
      drawn.text(260, 169.5, 6, "1");
      row(drawn, 187, rights, "2", "112", "14");
      drawn.text(340, 183.5, 6, "a");
      drawn.line(60, 192, 340, 192);
      drawn.text(60, 202, 7, "1 Measured in the second stage.");
      drawn.text(60, 211, 7, "a Still in a brace.");
      Grid grid = only(drawn);
      assertEquals(
          List.of(
              List.of("Patient", "Gap, mm", "Months"),
              List.of("1", "47", "9"),
              List.of("2", "112", "14")),
          grid.texts());
      assertEquals("1", grid.rows().get(1).get(1).marks().get(0).text());
      assertEquals("a", grid.rows().get(2).get(2).marks().get(0).text());
    }
  }
}
