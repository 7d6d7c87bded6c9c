package gapwise.paper.file;

import gapwise.paper.Word.Turn;

/**
 * A letter as it was drawn, in a frame in which its line runs from left to right: for turned text
 * the page is turned so that it does.
 *
 * @param text one letter, or several of a ligature
 * @param left to {@code right} along its line
 * @param baseline across its line, growing downwards
 * @param size points
 * @param turn which way its line runs on the page
 * @param bold whether its typeface says so
 * @param colour red, green and blue as 0xRRGGBB
 */
record Letter(
    String text,
    double left,
    double right,
    double baseline,
    double size,
    Turn turn,
    boolean bold,
    int colour) {
  /** Height above and depth below the line, in parts of the size: those of common typefaces. */
  static final double RISE = 0.74;

  static final double DROP = 0.21;

  boolean isBlank() {
    return text.isBlank() || text.equals("\u200b");
  }

  double width() {
    return right - left;
  }
}
