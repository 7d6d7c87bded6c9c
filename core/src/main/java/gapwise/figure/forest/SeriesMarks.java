package gapwise.figure.forest;

import gapwise.figure.drawing.Axis;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;

/** The marks of one series in the plot. */
final class SeriesMarks {
  private SeriesMarks() {}

  static void draw(Svg svg, Board board, ForestRow row, double middle) {
    Axis axis = board.axis();
    Style.Rhythm rhythm = board.style().rhythm();
    if (!row.estimate().intervalKnown()) {
      Marks.ring(svg, axis.x(row.estimate().value()), middle, rhythm.bar());
      return;
    }
    Marks.bar(svg, axis, row.estimate().limits(), middle, rhythm.bar());
    double x = axis.x(row.estimate().value());
    double radius = board.lensRadius(row.weightPercent());
    if (row.openEnd() == ForestRow.OpenEnd.NONE) {
      Marks.lens(svg, x, middle, radius);
    } else {
      Marks.lensAtBound(svg, x, middle, radius);
    }
  }
}
