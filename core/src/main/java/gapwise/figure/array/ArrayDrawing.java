package gapwise.figure.array;

import static gapwise.figure.drawing.Svg.at;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;

/**
 * Draws a hundred marks in ten rows from the lower left corner, and beside them a bar as high as
 * the share.
 */
public final class ArrayDrawing {
  private static final int ROW = 10;
  private static final double MARK = 4.4;
  private static final double STEP = 5.4;
  private static final double BAR = 4;
  private static final double EDGE = 0.5;

  /** Width of every array. */
  public static final double WIDTH = ROW * STEP + BAR + 4;

  /** Height of every array. */
  public static final double HEIGHT = ROW * STEP + 1;

  private ArrayDrawing() {}

  /**
   * Draws one array.
   *
   * @param title the three numbers in words, for those who cannot see them
   */
  public static Picture draw(HundredArray array, String title) {
    Svg svg = new Svg().begin(WIDTH, HEIGHT, "px", "img", title);
    StringBuilder solid = new StringBuilder();
    StringBuilder outlines = new StringBuilder();
    StringBuilder hatching = new StringBuilder();
    StringBuilder empty = new StringBuilder();
    for (int i = 0; i < HundredArray.HUNDRED; i++) {
      double x = EDGE + i % ROW * STEP;
      double y = HEIGHT - EDGE - MARK - i / ROW * STEP;
      if (i < array.filled()) {
        solid.append(box(x, y, MARK));
      } else if (i < array.filled() + array.hatched()) {
        outlines.append(box(x, y, MARK));
        hatching.append(strokes(x, y));
      } else {
        empty.append(box(x + 1.2, y + 1.2, MARK - 2.4));
      }
    }
    path(svg, solid, Ink.INK, "none");
    path(svg, outlines, "none", Ink.SOFT);
    path(svg, hatching, "none", Ink.INK);
    path(svg, empty, Ink.BONE_GREY, "none");
    bar(svg, array.estimate());
    return new Picture(svg.end(), WIDTH, HEIGHT);
  }

  /**
   * One mark alone, for a key: filled, hatched or empty.
   *
   * @param array of which the first mark is shown
   */
  public static Picture key(HundredArray array, String title) {
    double side = MARK * 2;
    Svg svg = new Svg().begin(side + 1, side + 1, "px", "img", title);
    if (array.filled() > 0) {
      svg.path(box(EDGE, EDGE, side), Ink.INK);
    } else if (array.hatched() > 0) {
      svg.shape(box(EDGE, EDGE, side), "none", Ink.SOFT, 0.8, "");
      svg.stroke("M" + at(EDGE, EDGE + side) + "L" + at(EDGE + side, EDGE), Ink.INK, 0.8);
    } else {
      svg.path(box(EDGE + 2.4, EDGE + 2.4, side - 4.8), Ink.BONE_GREY);
    }
    return new Picture(svg.end(), side + 1, side + 1);
  }

  private static void path(Svg svg, StringBuilder path, String fill, String edge) {
    if (!path.isEmpty()) {
      svg.shape(path.toString(), fill, edge, edge.equals("none") ? 0 : 0.6, "");
    }
  }

  private static String box(double x, double y, double side) {
    String to = Svg.n(x + side);
    return "M" + at(x, y) + "H" + to + "V" + Svg.n(y + side) + "H" + Svg.n(x) + "Z";
  }

  /** A stroke from the lower left to the upper right. */
  private static String strokes(double x, double y) {
    return "M" + at(x, y + MARK) + "L" + at(x + MARK, y);
  }

  /** The share as a bar of the height of the marks. */
  private static void bar(Svg svg, double share) {
    double x = ROW * STEP + 3;
    double height = ROW * STEP - 1;
    double filled = height * share;
    svg.shape(box(x, EDGE, BAR, height), "none", Ink.SOFT, 0.6, "");
    if (filled > 0) {
      svg.rect(x, EDGE + height - filled, BAR, filled, Ink.ACCENT);
    }
  }

  private static String box(double x, double y, double width, double height) {
    return "M" + at(x, y) + "H" + Svg.n(x + width) + "V" + Svg.n(y + height) + "H" + Svg.n(x) + "Z";
  }
}
