package gapwise.figure.forest;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Svg;

/**
 * A part whose height has been measured once; a long figure asks for it several times.
 *
 * @param part what is drawn
 * @param height its height
 */
record Sized(PagePart part, double height) implements PagePart {
  static Sized of(PagePart part) {
    return new Sized(part, part.height());
  }

  @Override
  public void draw(Svg svg, double top) {
    part.draw(svg, top);
  }
}
