package gapwise.figure.funnel;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Svg;
import java.util.ArrayList;
import java.util.List;

/** The cones between contours of one p value each, darker towards no effect. */
final class FunnelShades {
  /** Fills between contours from the inside out; the last runs to the edge. */
  private static final List<String> FILLS = List.of("#DDD3BA", Ink.BONE, "#F1ECE0", Ink.GROUND);

  private FunnelShades() {}

  static void draw(Svg svg, Funnel.Contours contours, FunnelField field) {
    for (int i = contours.lines().size() - 1; i >= 0; i--) {
      double reach = contours.lines().get(i).multiplier() * field.y().upper();
      List<double[]> cone =
          List.of(
              new double[] {contours.noEffect(), 0},
              new double[] {contours.noEffect() + reach, field.y().upper()},
              new double[] {contours.noEffect() - reach, field.y().upper()});
      List<double[]> seen = clip(clip(cone, field.x().lower(), 1), -field.x().upper(), -1);
      if (seen.size() > 2) {
        StringBuilder path = new StringBuilder();
        for (double[] corner : seen) {
          path.append(path.isEmpty() ? 'M' : 'L');
          path.append(Svg.at(field.x(corner[0]), field.y(corner[1])));
        }
        svg.shape(path.append('Z').toString(), fill(i), Ink.BONE_EDGE, 0.8, dashes(i));
      }
    }
  }

  static String fill(int contour) {
    return FILLS.get(Math.min(contour, FILLS.size() - 2));
  }

  /** Borders are told apart without shades too. */
  static String dashes(int contour) {
    return contour == 0 ? "" : contour == 1 ? "6 2" : "2 2";
  }

  /**
   * The part of a polygon where side times x is at least a bound (Sutherland and Hodgman, 1974).
   */
  private static List<double[]> clip(List<double[]> corners, double bound, int side) {
    List<double[]> kept = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      double[] from = corners.get(i);
      double[] to = corners.get((i + 1) % corners.size());
      double before = side * from[0] - bound;
      double after = side * to[0] - bound;
      if (before >= 0) {
        kept.add(from);
      }
      if ((before >= 0) != (after >= 0)) {
        double share = before / (before - after);
        kept.add(
            new double[] {
              from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])
            });
      }
    }
    return kept;
  }
}
