package gapwise.table;

import java.util.Objects;

/**
 * One cell and its place.
 *
 * @param sheet the sheet's name; of a CSV file its name without the ending
 * @param row the row number a spreadsheet shows, the header's row counted, from 1
 * @param column its column
 * @param text what stands in it, empty when nothing does. Numbers have at most 15 significant
 *     digits, no grouping and a decimal point (12, 0.1); a number shown as a percentage keeps its
 *     sign (85%); dates are ISO 8601 (2024-05-03); truth values are TRUE and FALSE
 * @param stored how the file kept it
 */
public record Cell(String sheet, int row, Column column, String text, Stored stored) {
  public Cell {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(stored, "stored");
    if (row < 1) {
      throw new IllegalArgumentException("row must be 1 or more, was " + row);
    }
  }

  /** Whether nothing but spaces stands here. */
  public boolean isBlank() {
    return Blank.is(text);
  }

  /** Whether the workbook kept a date here, perhaps out of something else that was typed. */
  public boolean isDate() {
    return stored == Stored.DATE;
  }

  /** The text without spaces around it, no-break spaces included. */
  public String stripped() {
    return Blank.strip(text);
  }

  /** The place in words for a {@link gapwise.problem.Problem}. */
  public String where() {
    return Place.cell(sheet, row, column.letter(), column.name());
  }
}
