package gapwise.paper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.paper.Drawn;
import gapwise.paper.Opened;
import gapwise.paper.Page;
import gapwise.paper.Paper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;

/** Draws invented papers with tables, and reads them. */
abstract class DrawnTables {
  private static final String PROSE =
      "The limb was held at its length and the gap was measured on films taken at one distance,"
          + " by a person who had not seen the patient before.";

  @TempDir Path folder;

  List<Page> pages(Drawn drawn) throws IOException {
    List<Page> pages = new ArrayList<>();
    try (Paper paper = ((Opened) Paper.open(drawn.save(folder))).paper()) {
      for (int number = 1; number <= paper.pages(); number++) {
        pages.add((Page) paper.page(number));
      }
    }
    return pages;
  }

  Grid only(Drawn drawn) throws IOException {
    List<Grid> grids = Tables.across(pages(drawn));
    assertEquals(
        1, grids.size(), grids.stream().map(g -> g.texts().toString()).toList().toString());
    return grids.get(0);
  }

  /** Prose in lines of so many letters. */
  static double prose(Drawn drawn, double x, double from, int letters, int lines)
      throws IOException {
    String text = PROSE.repeat(20);
    int at = 0;
    double y = from;
    for (int i = 0; i < lines; i++) {
      int end = text.lastIndexOf(' ', at + letters);
      drawn.text(x, y, 9, text.substring(at, end).strip());
      at = end;
      y += 12;
    }
    return y;
  }

  static void row(Drawn drawn, double y, double[] rights, String... cells) throws IOException {
    drawn.text(60, y, 9, cells[0]);
    for (int i = 1; i < cells.length; i++) {
      if (!cells[i].isEmpty()) {
        drawn.right(rights[i - 1], y, 9, cells[i]);
      }
    }
  }
}
