package gapwise.table;

/** The start of a text that may be long, fit to stand inside a message. */
final class Excerpt {
  private static final int LENGTH = 40;

  private Excerpt() {}

  static String of(String text) {
    String line = text.replaceAll("\\s+", " ");
    return line.length() <= LENGTH ? line : line.substring(0, LENGTH) + "...";
  }
}
