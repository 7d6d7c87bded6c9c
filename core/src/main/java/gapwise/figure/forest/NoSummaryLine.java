package gapwise.figure.forest;

import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.List;

/** Where nothing is pooled: the reason in words, across the room beside the plot's left end. */
record NoSummaryLine(Board board, ForestSummary.NotPooled none) implements PagePart {
  private double room() {
    return board.style().sheet().stacked()
        ? board.style().sheet().room()
        : board.columns().countsRight() - board.columns().labelLeft();
  }

  private List<String> reasonLines() {
    return TextMeasure.wrap(none.reason(), board.style().small(), room());
  }

  private List<String> labelLines() {
    return TextMeasure.wrap(none.label(), board.style().bold(), room(), 2);
  }

  private double line() {
    return board.style().type().text() * 1.32;
  }

  @Override
  public double height() {
    return line() * (labelLines().size() + reasonLines().size()) + line() * 0.6;
  }

  @Override
  public void draw(Svg svg, double top) {
    svg.open("g", "data-part", "not-pooled");
    double y = top + line() * 0.3;
    y = lines(svg, labelLines(), board.style().bold(), y);
    lines(svg, reasonLines(), board.style().small(), y);
    svg.close("g");
  }

  private double lines(Svg svg, List<String> lines, Lettering lettering, double top) {
    double y = top;
    for (String each : lines) {
      double baseline = y + line() / 2 + lettering.middleToBaseline();
      svg.text(board.columns().labelLeft(), baseline, Svg.Anchor.START, lettering, each);
      y += line();
    }
    return y;
  }
}
