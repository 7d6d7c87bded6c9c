package gapwise.paper.table;

import gapwise.paper.Box;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A table as printed.
 *
 * @param caption words above or below it, empty where it has none
 * @param parts where it stands; a table that goes on over a page has several
 * @param headerRows how many of the first rows head the columns
 * @param rows all of one length, at least one
 */
public record Grid(String caption, List<Part> parts, int headerRows, List<List<GridCell>> rows) {
  /**
   * A piece of a table.
   *
   * @param page from 1
   * @param firstRow the row of the grid that stands first on it
   */
  public record Part(int page, Box box, int firstRow) {
    public Part {
      Objects.requireNonNull(box, "box");
    }
  }

  public Grid {
    Objects.requireNonNull(caption, "caption");
    parts = List.copyOf(parts);
    rows = rows.stream().map(List::copyOf).toList();
    if (rows.isEmpty() || parts.isEmpty()) {
      throw new IllegalArgumentException("a table needs a row and a place");
    }
    int width = rows.get(0).size();
    if (width < 1 || rows.stream().anyMatch(row -> row.size() != width)) {
      throw new IllegalArgumentException("rows of a table must have one length");
    }
    if (headerRows < 0 || headerRows > rows.size()) {
      throw new IllegalArgumentException("more header rows than rows: " + headerRows);
    }
  }

  /** How many columns there are. */
  public int columns() {
    return rows.get(0).size();
  }

  /** The texts alone. */
  public List<List<String>> texts() {
    return rows.stream().map(row -> row.stream().map(GridCell::text).toList()).toList();
  }

  Grid withCaption(String words) {
    return new Grid(words, parts, headerRows, rows);
  }

  /** This and its continuation, without the header rows that are printed again. */
  Grid followedBy(Grid next, int repeated) {
    List<List<GridCell>> all = new ArrayList<>(rows);
    all.addAll(next.rows.subList(repeated, next.rows.size()));
    List<Part> places = new ArrayList<>(parts);
    Part part = next.parts.get(0);
    places.add(new Part(part.page(), part.box(), rows.size()));
    return new Grid(caption, places, headerRows, all);
  }
}
