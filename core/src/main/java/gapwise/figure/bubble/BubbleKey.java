package gapwise.figure.bubble;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.Legend.Entry;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import java.util.ArrayList;
import java.util.List;

/** How to read the marks that occur in an outcome over the length of missing bone. */
final class BubbleKey {
  private BubbleKey() {}

  static Legend of(Bubble bubble, Style style) {
    List<Entry> entries = new ArrayList<>();
    for (MethodMark kind : bubble.kinds()) {
      entries.add(
          new Entry(
              (svg, x, middle) -> MethodShape.draw(svg, kind, x + 14, middle, 6), kind.label()));
    }
    if (bubble.points().stream().anyMatch(point -> point.spread().isPresent())) {
      entries.add(
          new Entry(
              (svg, x, middle) ->
                  svg.stroke(
                      "M" + Svg.at(x, middle - 3) + "v6M" + Svg.at(x, middle) + "h28m0 -3v6",
                      Ink.BONE_GREY,
                      1.1),
              say("figure.key-lengths")));
    }
    if (!bubble.patients().isEmpty()) {
      entries.add(BubblePatients.key(bubble.isOf100()));
    }
    if (!bubble.curve().isEmpty()) {
      curve(bubble, entries);
    }
    return new Legend(style, entries);
  }

  private static void curve(Bubble bubble, List<Entry> entries) {
    entries.add(
        new Entry(
            (svg, x, middle) -> {
              patch(svg, x, middle, Ink.BONE, "");
              svg.line(x, middle, x + 28, middle, Ink.ACCENT, 2.2);
            },
            say("figure.key-average-band")));
    if (bubble.curve().stream().anyMatch(at -> at.prediction().isPresent())) {
      entries.add(
          new Entry(
              (svg, x, middle) -> patch(svg, x, middle, "none", "2 3"),
              say("figure.key-new-series-band")));
    }
    if (bubble.leavesData()) {
      entries.add(
          new Entry(
              (svg, x, middle) -> svg.dashed(x, middle, x + 28, middle, Ink.ACCENT, 1.8, "5 4"),
              say("figure.key-beyond-data")));
    }
  }

  private static void patch(Svg svg, double x, double middle, String fill, String dashes) {
    svg.shape("M" + Svg.at(x, middle - 7) + "h28v14h-28Z", fill, Ink.BONE_EDGE, 0.9, dashes);
  }
}
