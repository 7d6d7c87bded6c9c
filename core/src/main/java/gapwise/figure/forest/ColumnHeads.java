package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.List;

/** The line of column headings with the rule under it; on a phone only the axis is named. */
record ColumnHeads(Board board) implements PagePart {
  static final String SPAN = say("figure.head-of-bone");
  private static final String SERIES = say("figure.head-of-series");
  private static final String METHOD = say("figure.head-of-method");

  private Lettering small() {
    return board.style().small();
  }

  private double line() {
    return small().size() * 1.35;
  }

  private List<String> axisLines() {
    double room =
        board.style().sheet().stacked()
            ? board.style().sheet().room()
            : board.axis().right() - board.axis().left();
    return TextMeasure.wrap(board.forest().axis().heading(), small(), room, 2);
  }

  private List<String> spanLines() {
    return board.columns().bonesTold()
        ? TextMeasure.wrap(SPAN, small(), board.columns().spanRoom())
        : List.of();
  }

  private int lines() {
    return board.style().sheet().stacked()
        ? axisLines().size()
        : Math.max(axisLines().size(), spanLines().size());
  }

  @Override
  public double height() {
    return small().size() * 1.3 + lines() * line() + 5;
  }

  @Override
  public void draw(Svg svg, double top) {
    ForestColumns columns = board.columns();
    Heading heading = board.forest().heading();
    double foot = top + height() - 5;
    svg.open("g", "data-part", "heads");
    if (board.style().sheet().stacked()) {
      column(svg, columns.blockLeft(), Svg.Anchor.START, axisLines(), foot);
    } else {
      if (columns.bonesTold()) {
        column(svg, columns.blockLeft(), Svg.Anchor.START, List.of(SERIES), foot);
        if (columns.bonesDrawn()) {
          column(svg, columns.spanLeft(), Svg.Anchor.START, spanLines(), foot);
        } else {
          column(svg, columns.spanRight(), Svg.Anchor.END, spanLines(), foot);
        }
        column(svg, columns.countsRight(), Svg.Anchor.END, List.of(heading.counts()), foot);
      } else {
        column(svg, columns.blockLeft(), Svg.Anchor.START, List.of(METHOD), foot);
      }
      double centre = (board.axis().left() + board.axis().right()) / 2;
      column(svg, centre, Svg.Anchor.MIDDLE, axisLines(), foot);
      column(svg, columns.valuesRight(), Svg.Anchor.END, List.of(heading.values()), foot);
    }
    double y = top + height() - 0.5;
    svg.line(board.style().sheet().margin(), y, board.style().sheet().right(), y, Ink.INK, 1);
    svg.close("g");
  }

  private void column(Svg svg, double x, Svg.Anchor anchor, List<String> lines, double foot) {
    double middle = foot - (lines.size() - 0.5) * line();
    for (String each : lines) {
      if (!each.isBlank()) {
        svg.text(x, middle + small().middleToBaseline(), anchor, small(), each);
      }
      middle += line();
    }
  }
}
