package gapwise.untidy;

/** Names of places in sheets. */
final class Cells {
  private static final int LETTERS = 26;

  private Cells() {}

  /** F5 for row 4 and column 5, counted from 0. */
  static String reference(int row, int column) {
    StringBuilder letters = new StringBuilder();
    for (int rest = column; rest >= 0; rest = rest / LETTERS - 1) {
      letters.insert(0, (char) ('A' + rest % LETTERS));
    }
    return letters.append(row + 1).toString();
  }
}
