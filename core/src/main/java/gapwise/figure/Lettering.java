package gapwise.figure;

/** Size (units of the drawing), weight and colour of a piece of text. */
record Lettering(double size, boolean bold, String colour) {
  static Lettering plain(double size) {
    return new Lettering(size, false, Ink.INK);
  }

  static Lettering soft(double size) {
    return new Lettering(size, false, Ink.SOFT);
  }

  static Lettering bold(double size) {
    return new Lettering(size, true, Ink.INK);
  }

  Lettering in(String otherColour) {
    return new Lettering(size, bold, otherColour);
  }

  double width(String text) {
    return TextMeasure.width(text, size, bold);
  }

  /** Distance from the middle of a line down to its baseline: half the height of capitals. */
  double middleToBaseline() {
    return size * 0.36;
  }
}
