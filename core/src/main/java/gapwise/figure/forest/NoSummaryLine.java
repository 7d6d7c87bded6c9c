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

  /** Whether the reason stands beside its label. */
  private boolean onOneLine() {
    double both = board.style().bold().width(none.label()) + apart();
    return board.style().sheet().landscape()
        && both + board.style().small().width(none.reason()) <= room();
  }

  private double apart() {
    return board.style().type().text() * 0.7;
  }

  private double line() {
    return board.style().type().text() * 1.32;
  }

  @Override
  public double height() {
    int lines = onOneLine() ? 1 : labelLines().size() + reasonLines().size();
    return line() * lines + line() * 0.6;
  }

  @Override
  public void draw(Svg svg, double top) {
    svg.open("g", "data-part", "not-pooled");
    double y = top + line() * 0.3;
    double left = board.columns().labelLeft();
    double under = lines(svg, labelLines(), board.style().bold(), left, y);
    if (onOneLine()) {
      double beside = left + board.style().bold().width(none.label()) + apart();
      lines(svg, List.of(none.reason()), board.style().small(), beside, y);
    } else {
      lines(svg, reasonLines(), board.style().small(), left, under);
    }
    svg.close("g");
  }

  private double lines(Svg svg, List<String> lines, Lettering lettering, double x, double top) {
    double y = top;
    for (String each : lines) {
      double baseline = y + line() / 2 + lettering.middleToBaseline();
      svg.text(x, baseline, Svg.Anchor.START, lettering, each);
      y += line();
    }
    return y;
  }
}
