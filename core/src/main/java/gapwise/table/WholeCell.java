package gapwise.table;

import java.util.Objects;
import java.util.Optional;

/**
 * One cell of a sheet that is read as it looks.
 *
 * @param row from 1, as a spreadsheet shows it; of a text file the number of its record
 * @param column from 0
 * @param text what stands in it; as in {@link Cell}, with the words that its number format adds
 * @param stored how the file kept it
 * @param formula whether a formula made it
 * @param comment a comment attached to it
 * @param fill its colour as RRGGBB, or as {@code theme 4}; empty for none and white
 * @param struck whether it is struck through
 */
public record WholeCell(
    int row,
    int column,
    String text,
    Stored stored,
    boolean formula,
    Optional<String> comment,
    Optional<String> fill,
    boolean struck) {
  public WholeCell {
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(stored, "stored");
    Objects.requireNonNull(comment, "comment");
    Objects.requireNonNull(fill, "fill");
  }

  /** The cell in the words of a spreadsheet: F5. */
  public String reference() {
    return Column.letter(column) + row;
  }

  WholeCell withComment(String words) {
    return new WholeCell(row, column, text, stored, formula, Optional.of(words), fill, struck);
  }
}
