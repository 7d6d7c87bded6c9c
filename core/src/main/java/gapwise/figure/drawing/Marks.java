package gapwise.figure.drawing;

import static gapwise.figure.drawing.Svg.at;
import static gapwise.figure.drawing.Svg.n;

import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;

/** The marks in the plot: bar, lens, rhombus, hatched band, arrow head, open end. */
public final class Marks {
  /** A lens is this much flatter than a circle. */
  static final double LENS_FLATNESS = 0.68;

  private Marks() {}

  /** The interval as a bar; an end that leaves the axis gets an arrow head. */
  public static void bar(Svg svg, Axis axis, Limits limits, double middle, double thickness) {
    Axis.Place from = axis.place(limits.lower());
    Axis.Place to = axis.place(limits.upper());
    double width = Math.max(to.x() - from.x(), 0.6);
    svg.rect(from.x(), middle - thickness / 2, width, thickness, Ink.BONE_GREY);
    arrows(svg, from, to, middle, thickness, Ink.BONE_GREY);
  }

  private static void arrows(
      Svg svg, Axis.Place from, Axis.Place to, double middle, double thickness, String colour) {
    if (from.beyond()) {
      arrow(svg, from.x(), middle, -thickness, colour);
    }
    if (to.beyond()) {
      arrow(svg, to.x(), middle, thickness, colour);
    }
  }

  private static void arrow(Svg svg, double x, double middle, double thickness, String colour) {
    double half = Math.abs(thickness);
    svg.path(
        "M"
            + at(x, middle - half)
            + "L"
            + at(x + 1.5 * thickness, middle)
            + "L"
            + at(x, middle + half)
            + "Z",
        colour);
  }

  /** The estimate: an ellipse of half width {@code radius} with an upright tick through it. */
  public static void lens(Svg svg, double x, double middle, double radius) {
    double reach = radius * LENS_FLATNESS + 2.2;
    svg.line(x, middle - reach, x, middle + reach, Ink.INK, 1.3);
    ellipse(svg, x, middle, radius);
  }

  /**
   * The estimate on a bound of its scale: instead of the tick a dotted wall, for there the interval
   * has no limit of its own.
   */
  public static void lensAtBound(Svg svg, double x, double middle, double radius) {
    double reach = radius * LENS_FLATNESS + 4.4;
    svg.dashed(x, middle - reach, x, middle + reach, Ink.INK, 1.4, "1.5 1.5");
    ellipse(svg, x, middle, radius);
  }

  /** A value without an interval: an open ring, so that it is never taken for a lens. */
  public static void ring(Svg svg, double x, double middle, double radius) {
    String arc = "a" + Svg.n(radius) + " " + Svg.n(radius) + " 0 1 0 ";
    String path =
        "M"
            + Svg.at(x - radius, middle)
            + arc
            + Svg.n(2 * radius)
            + " 0"
            + arc
            + Svg.n(-2 * radius)
            + " 0Z";
    svg.shape(path, Ink.GROUND, Ink.INK, 1.4, "");
  }

  private static void ellipse(Svg svg, double x, double middle, double radius) {
    double height = radius * LENS_FLATNESS;
    svg.empty(
        "ellipse", "cx", n(x), "cy", n(middle), "rx", n(radius), "ry", n(height), "fill", Ink.INK);
    if (radius > 3) {
      svg.line(x, middle - height * 0.92, x, middle + height * 0.92, Ink.GROUND, 1.2);
    }
  }

  /** The pooled value: a rhombus from limit to limit, widest at the estimate. */
  public static void rhombus(Svg svg, Axis axis, Estimate estimate, double middle, double half) {
    Axis.Place from = axis.place(estimate.lower());
    Axis.Place to = axis.place(estimate.upper());
    double x = axis.x(estimate.value());
    double left = Math.min(from.x(), x - 1.5);
    double right = Math.max(to.x(), x + 1.5);
    svg.path(
        "M"
            + at(left, middle)
            + "L"
            + at(x, middle - half)
            + "L"
            + at(right, middle)
            + "L"
            + at(x, middle + half)
            + "Z",
        Ink.ACCENT);
    arrows(svg, from, to, middle, half * 0.6, Ink.ACCENT);
  }

  /**
   * The prediction interval: a hatched band. Hatching is drawn out, as patterns need identifiers.
   */
  public static void band(Svg svg, Axis axis, Limits limits, double top, double height) {
    Axis.Place from = axis.place(limits.lower());
    Axis.Place to = axis.place(limits.upper());
    double width = Math.max(to.x() - from.x(), 1);
    hatched(svg, from.x(), top, width, height);
    arrows(svg, from, to, top + height / 2, height * 0.7, Ink.ACCENT);
  }

  public static void hatched(Svg svg, double x, double top, double width, double height) {
    StringBuilder strokes = new StringBuilder();
    double right = x + width;
    for (double foot = x - height + 4; foot < right; foot += 4) {
      double startX = Math.max(foot, x);
      double endX = Math.min(foot + height, right);
      strokes.append('M').append(at(startX, top + height - (startX - foot)));
      strokes.append('L').append(at(endX, top + height - (endX - foot)));
    }
    if (!strokes.isEmpty()) {
      svg.stroke(strokes.toString(), Ink.ACCENT, 0.9);
    }
    svg.empty(
        "rect",
        "x",
        n(x),
        "y",
        n(top),
        "width",
        n(width),
        "height",
        n(height),
        "fill",
        "none",
        "stroke",
        Ink.ACCENT,
        "stroke-width",
        "0.8");
  }
}
