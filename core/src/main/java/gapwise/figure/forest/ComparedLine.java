package gapwise.figure.forest;

import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.value.Shown;
import java.util.List;

/**
 * One method where methods stand under each other by their pooled values alone: its name over the
 * size of its evidence, marks and values; where nothing is pooled, the reason, and of a single
 * series its own value.
 */
record ComparedLine(Board board, String name, ForestSummary summary, List<ForestRow> rows)
    implements PagePart {
  private static final int NAME_LINES = 2;

  private double line() {
    return board.style().type().text() * 1.3;
  }

  private List<String> nameLines() {
    double room = board.columns().labelRoom();
    return TextMeasure.wrap(name, board.style().bold(), room, NAME_LINES);
  }

  /** How much is behind it, or why there is no pooled value. */
  private List<String> under() {
    String words =
        summary instanceof ForestSummary.Pooled pooled
            ? String.join(", ", pooled.size())
            : ((ForestSummary.NotPooled) summary).reason();
    return TextMeasure.wrap(words, board.style().small(), board.columns().labelRoom());
  }

  /** Whether the reason stands beside the name, so that a method without a band takes one line. */
  private boolean onOneLine() {
    Style style = board.style();
    String reason = String.join(" ", under());
    return !(summary instanceof ForestSummary.Pooled)
        && style.bold().width(name) + apart() + style.small().width(reason)
            <= board.columns().labelRoom();
  }

  private double apart() {
    return board.style().type().text() * 0.6;
  }

  private double before() {
    return line() * 0.15;
  }

  @Override
  public double height() {
    int lines = onOneLine() ? 1 : Math.max(2, nameLines().size() + under().size());
    return before() + lines * line() + line() * 0.15;
  }

  @Override
  public void draw(Svg svg, double top) {
    Style style = board.style();
    ForestColumns columns = board.columns();
    svg.open("g", "data-part", summary instanceof ForestSummary.Pooled ? "pooled" : "not-pooled");
    double middle = top + before() + line() / 2;
    double y = middle;
    for (String each : nameLines()) {
      text(svg, columns.labelLeft(), y, Svg.Anchor.START, style.bold(), each);
      y += line();
    }
    double left = columns.labelLeft();
    if (onOneLine()) {
      left += style.bold().width(name) + apart();
      y = middle;
    }
    for (String each : under()) {
      text(svg, left, y, Svg.Anchor.START, style.small(), each);
      y += line();
    }
    if (summary instanceof ForestSummary.Pooled pooled) {
      pooled(svg, pooled, middle);
    } else if (rows.size() == 1) {
      SeriesMarks.draw(svg, board, rows.get(0), middle);
      String values = Shown.estimate(board.forest().measure(), rows.get(0).estimate());
      text(svg, columns.valuesRight(), middle, Svg.Anchor.END, style.text(), values);
    }
    svg.close("g");
  }

  private void pooled(Svg svg, ForestSummary.Pooled pooled, double middle) {
    Style style = board.style();
    double right = board.columns().valuesRight();
    String values = Shown.estimate(board.forest().measure(), pooled.estimate());
    text(svg, right, middle, Svg.Anchor.END, style.bold(), values);
    pooled
        .prediction()
        .map(limits -> ForestColumns.newCentre(board.forest(), limits))
        .ifPresent(
            words -> text(svg, right, middle + line(), Svg.Anchor.END, style.small(), words));
    SummaryLine.marks(svg, board, pooled, middle);
  }

  private static void text(
      Svg svg, double x, double middle, Svg.Anchor anchor, Lettering lettering, String words) {
    svg.text(x, middle + lettering.middleToBaseline(), anchor, lettering, words);
  }
}
