package gapwise.figure.file;

import java.util.regex.Pattern;

/** Words in a table that people open with a spreadsheet program. */
public final class CsvCell {
  private static final String STARTS_A_FORMULA = "=+-@\t\r";
  private static final Pattern NEGATIVE_NUMBER = Pattern.compile("-\\d+(\\.\\d+)?");

  private CsvCell() {}

  /**
   * The words so that no spreadsheet program runs them: those that it would take for a formula get
   * an apostrophe before them, which it shows as text. A number below zero stays one.
   */
  public static String text(String words) {
    boolean formula = !words.isEmpty() && STARTS_A_FORMULA.indexOf(words.charAt(0)) >= 0;
    return formula && !NEGATIVE_NUMBER.matcher(words).matches() ? "'" + words : words;
  }
}
