package gapwise.figure.file;

import com.github.weisj.jsvg.view.ViewBox;
import gapwise.figure.drawing.Picture;
import java.awt.Component;
import java.awt.Graphics2D;

/** Paints a drawing with its own typeface, wherever lines and letters can be painted. */
public final class Painter {
  private Painter() {}

  /**
   * Paints it.
   *
   * @param width in units of the target
   * @param height likewise
   */
  public static void paint(Picture picture, Graphics2D target, double width, double height) {
    Png.document(picture)
        .render((Component) null, target, new ViewBox((float) width, (float) height));
  }
}
