package gapwise.figure;

import java.util.OptionalDouble;

/** Sizes of one medium at one density, in units of the drawing. */
record Style(Sheet sheet, Type type, Rhythm rhythm) {

  /**
   * The ground that is drawn on.
   *
   * @param width width of the drawing
   * @param pageHeight height of a page; empty for one drawing as tall as it needs
   * @param unit "px" or "mm": the unit of the outer size
   * @param margin room left on all sides
   * @param stacked whether a series is stacked in lines (phone) or set in columns
   */
  record Sheet(
      double width, OptionalDouble pageHeight, String unit, double margin, boolean stacked) {
    double right() {
      return width - margin;
    }

    double room() {
      return width - 2 * margin;
    }
  }

  /** Sizes of text. */
  record Type(double title, double sentence, double text, double small) {}

  /**
   * Sizes of rows and marks.
   *
   * @param pitch height of a row of one line
   * @param secondLine height of each further line
   * @param lensRadius half the width of the lens of greatest weight
   * @param bar thickness of an interval bar
   * @param bone height of a bone end
   * @param span room for a span
   * @param nameLines lines that a long name may take
   */
  record Rhythm(
      double pitch,
      double secondLine,
      double lensRadius,
      double bar,
      double bone,
      double span,
      int nameLines) {}

  Lettering text() {
    return Lettering.plain(type.text());
  }

  Lettering bold() {
    return Lettering.bold(type.text());
  }

  Lettering small() {
    return Lettering.soft(type.small());
  }
}
