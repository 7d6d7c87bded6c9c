package gapwise.figure.bubble;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * The line of a bubble plot with its two bands, dashed beyond the data.
 *
 * @param bubble the figure
 * @param style sizes
 * @param field where things lie
 */
record BubbleCurve(Bubble bubble, Style style, BubbleField field) {
  void draw(Svg svg) {
    List<Bubble.At> told = bubble.curve().stream().filter(a -> a.prediction().isPresent()).toList();
    band(
        svg,
        told,
        at -> at.prediction().orElseThrow().lower(),
        at -> at.prediction().orElseThrow().upper(),
        "none",
        "2 3");
    band(
        svg,
        bubble.curve(),
        at -> at.interval().lower(),
        at -> at.interval().upper(),
        Ink.BONE,
        "");
    for (int i = 1; i < bubble.curve().size(); i++) {
      Bubble.At from = bubble.curve().get(i - 1);
      Bubble.At to = bubble.curve().get(i);
      if (!from.beyondData() && !to.beyondData()) {
        svg.line(
            field.x(from.lengthCentimetres()),
            field.y(from.value()),
            field.x(to.lengthCentimetres()),
            field.y(to.value()),
            Ink.ACCENT,
            2.2);
      }
    }
    beyond(svg);
  }

  /** The parts beyond the data: dashed, behind an upright line, and named. */
  private void beyond(Svg svg) {
    for (List<Bubble.At> part : beyondParts()) {
      StringBuilder path = new StringBuilder();
      for (Bubble.At at : part) {
        path.append(path.isEmpty() ? 'M' : 'L');
        path.append(Svg.at(field.x(at.lengthCentimetres()), field.y(at.value())));
      }
      svg.shape(path.toString(), "none", Ink.ACCENT, 1.8, "5 4");
    }
    List<Bubble.At> inside = bubble.curve().stream().filter(a -> !a.beyondData()).toList();
    if (inside.isEmpty() || !bubble.leavesData()) {
      return;
    }
    new BubbleWalls(
            style,
            field,
            bubble.curve().get(0).beyondData()
                ? OptionalDouble.of(field.x(inside.get(0).lengthCentimetres()))
                : OptionalDouble.empty(),
            bubble.curve().get(bubble.curve().size() - 1).beyondData()
                ? OptionalDouble.of(field.x(inside.get(inside.size() - 1).lengthCentimetres()))
                : OptionalDouble.empty())
        .draw(svg);
  }

  private List<List<Bubble.At>> beyondParts() {
    List<List<Bubble.At>> parts = new ArrayList<>();
    List<Bubble.At> curve = bubble.curve();
    List<Bubble.At> part = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      boolean touches =
          curve.get(i).beyondData()
              || (i > 0 && curve.get(i - 1).beyondData())
              || (i + 1 < curve.size() && curve.get(i + 1).beyondData());
      if (touches) {
        part.add(curve.get(i));
      } else if (!part.isEmpty()) {
        parts.add(part);
        part = new ArrayList<>();
      }
    }
    parts.add(part);
    return parts.stream().filter(each -> each.size() > 1).toList();
  }

  private void band(
      Svg svg,
      List<Bubble.At> points,
      ToDoubleFunction<Bubble.At> lower,
      ToDoubleFunction<Bubble.At> upper,
      String fill,
      String dashes) {
    if (points.size() < 2) {
      return;
    }
    List<double[]> edge = new ArrayList<>(along(points, upper));
    List<double[]> back = new ArrayList<>(along(points, lower));
    Collections.reverse(back);
    edge.addAll(back);
    StringBuilder path = new StringBuilder();
    for (double[] corner : edge) {
      path.append(path.isEmpty() ? 'M' : 'L').append(Svg.at(corner[0], corner[1]));
    }
    svg.shape(path.append('Z').toString(), fill, Ink.BONE_EDGE, 0.9, dashes);
  }

  /**
   * One edge of a band, x and y of each corner. Where it leaves the field it has a corner at the
   * crossing, so that it runs straight into the edge of the field and does not bend before it.
   */
  private List<double[]> along(List<Bubble.At> points, ToDoubleFunction<Bubble.At> value) {
    List<double[]> corners = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      Bubble.At at = points.get(i);
      if (i > 0) {
        Bubble.At before = points.get(i - 1);
        crossings(value.applyAsDouble(before), value.applyAsDouble(at))
            .mapToObj(
                share -> {
                  double x = field.x(before.lengthCentimetres());
                  double y = value.applyAsDouble(before);
                  return new double[] {
                    x + share * (field.x(at.lengthCentimetres()) - x),
                    field.y(y + share * (value.applyAsDouble(at) - y))
                  };
                })
            .forEach(corners::add);
      }
      corners.add(new double[] {field.x(at.lengthCentimetres()), field.y(value.applyAsDouble(at))});
    }
    return corners;
  }

  /** Shares of the way from one value to the next at which an end of the axis is crossed. */
  private DoubleStream crossings(double from, double to) {
    return DoubleStream.of(field.y().lower(), field.y().upper())
        .map(end -> (end / field.factor() - from) / (to - from))
        .filter(share -> 0 < share && share < 1)
        .sorted();
  }
}
