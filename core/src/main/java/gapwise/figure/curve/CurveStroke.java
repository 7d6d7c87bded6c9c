package gapwise.figure.curve;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Svg;

/**
 * How a line is told from others without colour: by its dashes and its weight.
 *
 * @param dashes empty for a whole line
 */
record CurveStroke(String colour, double width, String dashes) {
  private static final CurveStroke[] POOLED = {
    new CurveStroke(Ink.ACCENT, 3, ""),
    new CurveStroke(Ink.ACCENT, 3, "10 5"),
    new CurveStroke(Ink.ACCENT, 3, "2.5 4"),
    new CurveStroke(Ink.ACCENT, 3, "14 4 2.5 4"),
    new CurveStroke(Ink.ACCENT, 1.8, ""),
    new CurveStroke(Ink.ACCENT, 1.8, "6 4"),
  };

  private static final CurveStroke[] SINGLE = {
    new CurveStroke(Ink.INK, 1.9, ""),
    new CurveStroke(Ink.INK, 1.9, "9 4"),
    new CurveStroke(Ink.INK, 2.2, "2 3.2"),
    new CurveStroke(Ink.INK, 1.9, "12 3 2 3"),
    new CurveStroke(Ink.SOFT, 1.1, ""),
    new CurveStroke(Ink.SOFT, 1.1, "5 3"),
  };

  static CurveStroke of(CurveFigure figure, Curve curve) {
    int place =
        figure.curves().stream().filter(c -> c.pooled() == curve.pooled()).toList().indexOf(curve);
    return (curve.pooled() ? POOLED : SINGLE)[place % SINGLE.length];
  }

  void draw(Svg svg, String path) {
    svg.shape(path, "none", colour, width, dashes);
  }
}
