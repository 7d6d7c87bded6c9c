package gapwise.untidy;

import java.util.List;
import java.util.Map;

/**
 * Where one table lies in a grid.
 *
 * @param firstColumn the first column of it
 * @param lastColumn the last column of it
 * @param header rows that name columns; empty where no row does
 * @param data rows with values, in order
 * @param sections lines inside the table that name what follows, by the row that they stand in
 */
record Area(
    int firstColumn,
    int lastColumn,
    List<Integer> header,
    List<Integer> data,
    Map<Integer, GridCell> sections) {
  Area {
    header = List.copyOf(header);
    data = List.copyOf(data);
    sections = Map.copyOf(sections);
  }
}
