package gapwise.figure.forest;

import gapwise.figure.drawing.Part;
import gapwise.figure.drawing.Svg;

/**
 * A part whose height has been measured once; a long figure asks for it several times.
 *
 * @param part what is drawn
 * @param height its height
 */
record Sized(Part part, double height) implements Part {
  static Sized of(Part part) {
    return new Sized(part, part.height());
  }

  @Override
  public void draw(Svg svg, double top) {
    part.draw(svg, top);
  }
}
