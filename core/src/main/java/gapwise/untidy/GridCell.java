package gapwise.untidy;

import java.util.Objects;
import java.util.Optional;

/**
 * One located text.
 *
 * @param row from 0
 * @param column from 0
 * @param text what stands there, without spaces around it; may be empty where only a colour is
 * @param id how its owner finds the place again: F5 in a sheet, anything else on a page
 * @param date whether the file kept it as a date
 * @param formula whether a formula made it
 * @param comment a comment attached to it
 * @param fill its colour, as RRGGBB or a name; empty for none
 * @param struck whether it is struck through
 * @param hidden whether its row, column or sheet is hidden
 */
public record GridCell(
    int row,
    int column,
    String text,
    String id,
    boolean date,
    boolean formula,
    Optional<String> comment,
    Optional<String> fill,
    boolean struck,
    boolean hidden) {
  public GridCell {
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(comment, "comment");
    Objects.requireNonNull(fill, "fill");
    if (row < 0 || column < 0) {
      throw new IllegalArgumentException("row and column must be 0 or more, cell " + id);
    }
  }

  /** A text with nothing else to be seen, such as one printed on a page. */
  public static GridCell plain(int row, int column, String text, String id) {
    return new GridCell(
        row, column, text, id, false, false, Optional.empty(), Optional.empty(), false, false);
  }

  boolean isBlank() {
    return text.isBlank();
  }
}
