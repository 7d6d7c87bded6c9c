package gapwise.paper;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.paper.table.Grid;
import gapwise.paper.table.GridCell;
import gapwise.paper.table.Tables;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Prints what is found in a PDF by itself, as JSON: tables as {@code grids}. For a person who wants
 * to see how well papers of another kind are read.
 */
final class PaperReading {
  private static final ObjectMapper JSON = new ObjectMapper();

  private PaperReading() {}

  public static void main(String[] arguments) throws java.io.IOException {
    Opening opening = Paper.open(Path.of(arguments[0]));
    if (!(opening instanceof Opened opened)) {
      System.out.println(JSON.writeValueAsString(opening));
      return;
    }
    try (Paper paper = opened.paper()) {
      List<Page> pages = new ArrayList<>();
      for (int number = 1; number <= paper.pages(); number++) {
        if (paper.page(number) instanceof Page page) {
          pages.add(page);
        }
      }
      ObjectNode all = JSON.createObjectNode();
      ArrayNode grids = all.putArray("grids");
      Tables.across(pages).forEach(grid -> grids.add(grid(grid)));
      System.out.println(JSON.writerWithDefaultPrettyPrinter().writeValueAsString(all));
    }
  }

  private static ObjectNode grid(Grid grid) {
    ObjectNode node = JSON.createObjectNode();
    node.put("page", grid.parts().get(0).page());
    ArrayNode box = node.putArray("box");
    Box place = grid.parts().get(0).box();
    box.add(place.left()).add(place.top()).add(place.right()).add(place.bottom());
    node.put("caption", grid.caption());
    node.put("header_rows", grid.headerRows());
    node.put("parts", grid.parts().size());
    ArrayNode rows = node.putArray("rows");
    for (List<GridCell> row : grid.rows()) {
      ArrayNode cells = rows.addArray();
      row.forEach(cell -> cells.add(cell.text()));
    }
    return node;
  }
}
