package gapwise.figure.funnel;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.Legend.Entry;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How to read the marks that occur in a funnel plot. */
final class FunnelKey {
  private FunnelKey() {}

  static Legend of(Funnel funnel, Style style) {
    List<Entry> entries = new ArrayList<>();
    entries.add(
        new Entry(
            (svg, x, middle) -> FunnelPlot.disc(svg, x + 14, middle, 4.4), say("figure.key-dot")));
    if (!funnel.imagined().isEmpty()) {
      entries.add(
          new Entry(
              (svg, x, middle) -> Marks.ring(svg, x + 14, middle, 4.4),
              say("figure.key-imagined")));
    }
    funnel
        .centre()
        .ifPresent(
            centre -> {
              entries.add(
                  new Entry(
                      (svg, x, middle) ->
                          svg.line(x + 14, middle - 8, x + 14, middle + 8, Ink.ACCENT, 1.6),
                      say("figure.key-centre")));
              entries.add(
                  new Entry(
                      (svg, x, middle) ->
                          svg.dashed(x, middle, x + 28, middle, Ink.ACCENT, 1.4, "7 3"),
                      say("figure.key-chance", Map.of("share", percent(centre.level())))));
            });
    funnel.contours().ifPresent(contours -> contours(contours, entries));
    return new Legend(style, entries);
  }

  private static void contours(Funnel.Contours contours, List<Entry> entries) {
    entries.add(
        new Entry(
            (svg, x, middle) ->
                svg.dashed(x + 14, middle - 8, x + 14, middle + 8, Ink.INK, 1.1, "1.2 3"),
            say("figure.key-contour-centre")));
    String above = "";
    for (int i = 0; i < contours.lines().size(); i++) {
      String p = contours.lines().get(i).pValue();
      int contour = i;
      String words =
          i == 0
              ? say("figure.key-outermost", Map.of("p", p))
              : say("figure.key-contour", Map.of("from", p, "to", above));
      entries.add(new Entry((svg, x, middle) -> patch(svg, x, middle, contour), words));
      above = p;
    }
  }

  private static void patch(Svg svg, double x, double middle, int contour) {
    svg.shape(
        "M" + Svg.at(x, middle - 7) + "h28v14h-28Z",
        FunnelShades.fill(contour),
        Ink.BONE_EDGE,
        0.8,
        FunnelShades.dashes(contour));
  }

  private static String percent(double level) {
    return BigDecimal.valueOf(level).movePointRight(2).stripTrailingZeros().toPlainString();
  }
}
