package gapwise.exchange.form;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Text as a cell of a workbook keeps it (ECMA-376 part 1, 22.9.2.19): what XML cannot hold is
 * written as "_x0001_", so that a text which itself looks like that begins with "_x005F_".
 */
public final class WorkbookText {
  /** Most letters of a cell (ECMA-376 names none; every spreadsheet program has this limit). */
  public static final int MOST_LETTERS = 32_767;

  /** Letters that one letter may become. */
  private static final int LONGEST_ESCAPE = 7;

  private static final Pattern LIKE_AN_ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");

  private WorkbookText() {}

  /** The text as it is written. */
  public static String of(String text) {
    String plain = LIKE_AN_ESCAPE.matcher(text).replaceAll("_x005F_");
    if (plain.codePoints().allMatch(WorkbookText::standsInXml)) {
      return plain;
    }
    StringBuilder written = new StringBuilder(plain.length() + 16);
    plain
        .codePoints()
        .forEach(
            point -> {
              if (standsInXml(point)) {
                written.appendCodePoint(point);
              } else {
                written.append(String.format(Locale.ROOT, "_x%04X_", point));
              }
            });
    return written.toString();
  }

  /**
   * Whether XML 1.0 (section 2.2, Char) has the character; a carriage return is one that parsers
   * change (section 2.11).
   */
  private static boolean standsInXml(int point) {
    return point == '\t'
        || point == '\n'
        || (point >= 0x20 && point <= 0xD7FF)
        || (point >= 0xE000 && point <= 0xFFFD)
        || point >= 0x10000;
  }

  /** Whether a cell cannot hold the text. */
  public static boolean isTooLong(String text) {
    return text.length() > MOST_LETTERS / LONGEST_ESCAPE && of(text).length() > MOST_LETTERS;
  }
}
