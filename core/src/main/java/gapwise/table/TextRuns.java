package gapwise.table;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Collects the text of one string item: the t elements of it and of its runs, without the reading
 * aid of Japanese texts (rPh), escapes undone (ECMA-376 part 1, 18.4 and 22.9.2.19).
 */
final class TextRuns {
  private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");
  private static final int HEXADECIMAL = 16;

  /** A spreadsheet cell holds 32,767 characters; far more than that is an attack. */
  private static final int MOST_CHARACTERS = 1_000_000;

  private final StringBuilder text = new StringBuilder();
  private boolean inText;
  private boolean inReadingAid;

  void clear() {
    text.setLength(0);
    inText = false;
    inReadingAid = false;
  }

  void start(String name) {
    if (name.equals("t")) {
      inText = true;
    } else if (name.equals("rPh")) {
      inReadingAid = true;
    }
  }

  void end(String name) {
    if (name.equals("t")) {
      inText = false;
    } else if (name.equals("rPh")) {
      inReadingAid = false;
    }
  }

  void characters(char[] characters, int start, int length) {
    if (inText && !inReadingAid) {
      append(characters, start, length);
    }
  }

  /** Takes characters wherever they stand. */
  void append(char[] characters, int start, int length) {
    if (text.length() + length > MOST_CHARACTERS) {
      throw new TooLong();
    }
    text.append(characters, start, length);
  }

  /** More characters than any text of people has. */
  static final class TooLong extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooLong() {
      super("more than " + MOST_CHARACTERS + " characters in a text");
    }
  }

  String text() {
    String raw = text.toString();
    if (!raw.contains("_x")) {
      return raw;
    }
    return ESCAPE
        .matcher(raw)
        .replaceAll(
            escape ->
                Matcher.quoteReplacement(
                    Character.toString((char) Integer.parseInt(escape.group(1), HEXADECIMAL))));
  }
}
