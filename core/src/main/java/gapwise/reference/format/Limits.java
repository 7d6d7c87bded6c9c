package gapwise.reference.format;

/** How much of one record is kept, so that no file fills the memory. */
final class Limits {
  /** Letters of one field; the longest abstracts have some 10,000, whole books are none. */
  static final int FIELD = 100_000;

  /** Fields of one record; a paper of the largest teams has some thousand authors. */
  static final int FIELDS = 20_000;

  /** Letters of one record in all. */
  static final int RECORD = 2_000_000;

  /** Letters of a text that is quoted in a message. */
  static final int QUOTED = 60;

  private Limits() {}

  /** A text as it is quoted in a message. */
  static String quoted(String text) {
    String plain = text.replaceAll("\\s+", " ").strip();
    return "\"" + (plain.length() > QUOTED ? plain.substring(0, QUOTED) + "..." : plain) + "\"";
  }
}
