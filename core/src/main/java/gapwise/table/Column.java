package gapwise.table;

import java.util.Objects;

/**
 * One named column of a sheet.
 *
 * @param name the name in the header, without spaces around it; never blank
 * @param index position from the left, 0 for the first
 */
public record Column(String name, int index) {
  private static final int LETTERS = 26;

  public Column {
    Objects.requireNonNull(name, "name");
    if (Blank.is(name)) {
      throw new IllegalArgumentException("name must not be blank, index " + index);
    }
    if (index < 0) {
      throw new IllegalArgumentException("index must not be negative, was " + index);
    }
  }

  /** The letters a spreadsheet shows above the column: A for index 0, AA for index 26. */
  public String letter() {
    return letter(index);
  }

  /** The letters of a column that has no name. */
  static String letter(int index) {
    StringBuilder letters = new StringBuilder();
    for (int rest = index; rest >= 0; rest = rest / LETTERS - 1) {
      letters.insert(0, (char) ('A' + rest % LETTERS));
    }
    return letters.toString();
  }
}
