package gapwise.figure.drawing;

/** Words of a drawing, which may come from a table of any length. */
public final class Words {
  /** Of a name that a pointer or a screen reader is told: some lines of it. */
  static final int IN_A_NAME = 1000;

  /** Of a description, a sentence or a citation: some pages of it. */
  public static final int IN_A_TEXT = 10_000;

  private Words() {}

  /**
   * The text, or its beginning with an ellipsis. A drawing shortens; the table beside it holds the
   * whole.
   *
   * @param letters 1 or more
   */
  public static String atMost(String text, int letters) {
    if (text.length() <= letters) {
      return text;
    }
    int end = Character.isHighSurrogate(text.charAt(letters - 1)) ? letters - 1 : letters;
    return text.substring(0, end) + "\u2026";
  }
}
