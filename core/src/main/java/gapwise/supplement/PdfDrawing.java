package gapwise.supplement;

import gapwise.figure.drawing.Picture;

/** Draws a figure as PDF; the room that does it stands nearer to the person than this one. */
@FunctionalInterface
public interface PdfDrawing {
  /**
   * The drawing on one page of its own size, the same bytes for the same drawing.
   *
   * @param title what the document is called
   */
  byte[] pdf(Picture picture, String title);
}
