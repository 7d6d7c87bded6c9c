package gapwise.figure.drawing;

/** Size (units of the drawing), weight and colour of a piece of text. */
public record Lettering(double size, boolean bold, String colour) {
  public static Lettering plain(double size) {
    return new Lettering(size, false, Ink.INK);
  }

  static Lettering soft(double size) {
    return new Lettering(size, false, Ink.SOFT);
  }

  public static Lettering bold(double size) {
    return new Lettering(size, true, Ink.INK);
  }

  public Lettering in(String otherColour) {
    return new Lettering(size, bold, otherColour);
  }

  public double width(String text) {
    return TextMeasure.width(text, size, bold);
  }

  /** Distance from the middle of a line down to its baseline: half the height of capitals. */
  public double middleToBaseline() {
    return size * 0.36;
  }
}
