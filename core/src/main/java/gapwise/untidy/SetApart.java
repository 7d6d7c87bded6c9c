package gapwise.untidy;

import java.util.Objects;

/**
 * A text that is no value of the template, and why.
 *
 * @param sheet the grid's name
 * @param cell the cell's id
 * @param words what stands there
 * @param reason a sentence
 */
public record SetApart(String sheet, String cell, String words, String reason) {
  public SetApart {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(cell, "cell");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(reason, "reason");
  }
}
