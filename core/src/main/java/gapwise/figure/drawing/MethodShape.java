package gapwise.figure.drawing;

import static gapwise.figure.drawing.Svg.at;
import static gapwise.figure.drawing.Svg.n;

/** The mark of a method at any size: its shape tells methods apart without colour. */
public final class MethodShape {
  private MethodShape() {}

  /**
   * Draws the mark of a method centred on a place, within a circle of the radius.
   *
   * @param kind of which method; a disc for a name of a shape not known here
   */
  public static void draw(Svg svg, MethodMark kind, double x, double y, double radius) {
    double r = radius;
    switch (kind.mark()) {
      case "ring", "ring-dot" -> {
        circle(svg, kind, x, y, r * 0.82, false);
        if (kind.mark().equals("ring-dot")) {
          circle(svg, kind, x, y, r * 0.3, true);
        }
      }
      case "hexagon" -> filled(svg, kind, polygon(x, y, r, 6));
      case "triangle" -> filled(svg, kind, polygon(x, y, r, 3));
      case "lattice-diamond" -> {
        open(svg, kind, polygon(x, y, r, 4));
        double h = r / 2;
        svg.stroke(
            "M"
                + at(x - h, y - h)
                + "L"
                + at(x + h, y + h)
                + "M"
                + at(x + h, y - h)
                + "L"
                + at(x - h, y + h),
            kind.colour(),
            Math.max(1.1, r * 0.16));
      }
      case "square" -> filled(svg, kind, box(x, y, r * 0.8, r * 0.8));
      case "round-square" -> {
        // Rounded corners alone are not told from a square at the size of a mark.
        filled(svg, kind, rounded(x, y, r * 0.85));
        svg.empty(
            "circle", "cx", n(x), "cy", n(y), "r", n(Math.max(1.3, r * 0.3)), "fill", Ink.GROUND);
      }
      case "open-triangle" ->
          open(
              svg,
              kind,
              "M"
                  + at(x - r * 0.85, y - r * 0.6)
                  + "H"
                  + n(x + r * 0.85)
                  + "L"
                  + at(x, y + r * 0.85)
                  + "Z");
      case "open-square" -> open(svg, kind, box(x, y, r * 0.75, r * 0.75));
      case "barred-square" -> {
        open(svg, kind, box(x, y, r * 0.8, r * 0.8));
        double h = r * 0.8;
        svg.stroke(
            "M"
                + at(x - h, y - h / 3)
                + "H"
                + n(x + h)
                + "M"
                + at(x - h, y + h / 3)
                + "H"
                + n(x + h),
            kind.colour(),
            Math.max(1.1, r * 0.16));
      }
      case "bow-tie" ->
          filled(
              svg,
              kind,
              "M"
                  + at(x - r, y - r * 0.75)
                  + "L"
                  + at(x + r, y + r * 0.75)
                  + "V"
                  + n(y - r * 0.75)
                  + "L"
                  + at(x - r, y + r * 0.75)
                  + "Z");
      case "bar" -> filled(svg, kind, box(x, y, r, r * 0.4));
      case "open-bar" -> open(svg, kind, box(x, y, r, r * 0.4));
      case "double-bar" -> {
        filled(svg, kind, box(x, y - r * 0.5, r, r * 0.28));
        filled(svg, kind, box(x, y + r * 0.5, r, r * 0.28));
      }
      case "cross" ->
          svg.stroke(
              "M" + at(x - r, y) + "H" + n(x + r) + "M" + at(x, y - r) + "V" + n(y + r),
              kind.colour(),
              Math.max(1.6, r * 0.45));
      case "chevron" ->
          svg.stroke(
              chevron(x - r * 0.5, y, r * 0.8) + chevron(x + r * 0.3, y, r * 0.8),
              kind.colour(),
              Math.max(1.4, r * 0.3));
      // Smaller than the others, or it could be taken for a hexagon.
      default -> circle(svg, kind, x, y, r * 0.65, true);
    }
  }

  private static String chevron(double x, double y, double r) {
    return "M" + at(x - r * 0.3, y - r) + "L" + at(x + r * 0.5, y) + "L" + at(x - r * 0.3, y + r);
  }

  private static void filled(Svg svg, MethodMark kind, String path) {
    svg.shape(path, kind.colour(), Ink.GROUND, 1, "");
  }

  private static void open(Svg svg, MethodMark kind, String path) {
    svg.shape(path, "none", kind.colour(), 1.8, "");
  }

  private static void circle(
      Svg svg, MethodMark kind, double x, double y, double radius, boolean filled) {
    svg.empty(
        "circle",
        "cx",
        n(x),
        "cy",
        n(y),
        "r",
        n(radius),
        "fill",
        filled ? kind.colour() : "none",
        "stroke",
        filled ? Ink.GROUND : kind.colour(),
        "stroke-width",
        filled ? "1" : n(Math.max(1.8, radius * 0.32)));
  }

  private static String box(double x, double y, double halfWidth, double halfHeight) {
    return "M"
        + at(x - halfWidth, y - halfHeight)
        + "H"
        + n(x + halfWidth)
        + "V"
        + n(y + halfHeight)
        + "H"
        + n(x - halfWidth)
        + "Z";
  }

  private static String rounded(double x, double y, double half) {
    double corner = half * 0.6;
    String arc = "A" + n(corner) + " " + n(corner) + " 0 0 1 ";
    return "M"
        + at(x - half + corner, y - half)
        + "H"
        + n(x + half - corner)
        + arc
        + at(x + half, y - half + corner)
        + "V"
        + n(y + half - corner)
        + arc
        + at(x + half - corner, y + half)
        + "H"
        + n(x - half + corner)
        + arc
        + at(x - half, y + half - corner)
        + "V"
        + n(y - half + corner)
        + arc
        + at(x - half + corner, y - half)
        + "Z";
  }

  /** A regular polygon with a corner at the top. */
  private static String polygon(double x, double y, double radius, int corners) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < corners; i++) {
      double angle = 2 * Math.PI * i / corners - Math.PI / 2;
      path.append(i == 0 ? 'M' : 'L');
      path.append(at(x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
    }
    return path.append('Z').toString();
  }
}
