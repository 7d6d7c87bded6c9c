package gapwise.exchange.form;

/**
 * Keeps text from being taken for something else. A spreadsheet runs text that starts with = + -
 * or @ as a formula, and this template reads "-" or "NR" as a missing value; such text is written
 * with an apostrophe before it, which reading takes away again. An apostrophe before anything else
 * belongs to the text. The same in workbooks and CSV files, so that a workbook saved as CSV stays
 * harmless.
 */
public final class Guard {
  private Guard() {}

  public static String write(String text) {
    return needed(text) ? "'" + text : text;
  }

  public static String read(String text) {
    return text.startsWith("'") && needed(text.substring(1)) ? text.substring(1) : text;
  }

  private static boolean needed(String text) {
    if (text.isEmpty()) {
      return false;
    }
    return switch (text.charAt(0)) {
      case '=', '+', '-', '@', '#', '\t', '\r' -> true;
      case '\'' -> needed(text.substring(1));
      default -> MissingWords.read(text).isPresent();
    };
  }
}
