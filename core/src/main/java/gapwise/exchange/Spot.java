package gapwise.exchange;

import java.util.List;
import java.util.Objects;

/**
 * A place in the sheets of a template, for programs that show it.
 *
 * @param sheet name of the sheet
 * @param row number of the row, the header's counted
 * @param columns template columns; empty for the row as a whole
 */
public record Spot(String sheet, int row, List<String> columns) {
  public Spot {
    Objects.requireNonNull(sheet, "sheet");
    columns = List.copyOf(columns);
  }
}
