package gapwise.table;

/** What counts as nothing in a cell: no character that leaves ink, no-break spaces included. */
final class Blank {
  private Blank() {}

  static boolean is(String text) {
    for (int at = 0; at < text.length(); at++) {
      if (!isSpace(text.charAt(at))) {
        return false;
      }
    }
    return true;
  }

  /** The text without the spaces around it. */
  static String strip(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && isSpace(text.charAt(from))) {
      from++;
    }
    while (to > from && isSpace(text.charAt(to - 1))) {
      to--;
    }
    return text.substring(from, to);
  }

  private static boolean isSpace(int character) {
    return Character.isWhitespace(character) || Character.isSpaceChar(character);
  }
}
