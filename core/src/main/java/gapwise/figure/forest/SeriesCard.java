package gapwise.figure.forest;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;

/** One series stacked in lines for a narrow screen: name, numbers with span, plot. */
record SeriesCard(Board board, ForestRow row) implements PagePart {
  private static final double STRIP = 24;

  /** Room around a card; the line of numbers sits a little lower than its middle. */
  private static final double AROUND = 7;

  private record Line(String text, Lettering lettering) {}

  private List<Line> lines() {
    Style style = board.style();
    List<Line> lines = new ArrayList<>();
    double room = board.columns().labelRoom();
    TextMeasure.wrap(row.study(), style.text(), room, 3)
        .forEach(text -> lines.add(new Line(text, style.text())));
    if (!row.detail().isBlank()) {
      TextMeasure.wrap(row.detail(), style.small(), room, 2)
          .forEach(text -> lines.add(new Line(text, style.small())));
    }
    if (!countsFitBeside()) {
      TextMeasure.wrap(row.counts(), style.small(), room, 2)
          .forEach(text -> lines.add(new Line(text, style.small())));
    }
    return lines;
  }

  private String values() {
    return Shown.estimate(board.forest().measure(), row.estimate());
  }

  private double countsLeft() {
    return board.columns().spanLeft() + board.style().rhythm().span() + 10;
  }

  private boolean countsFitBeside() {
    Style style = board.style();
    double end = countsLeft() + style.small().width(row.counts()) + 8;
    return end <= board.columns().valuesRight() - style.bold().width(values());
  }

  @Override
  public double height() {
    double second = board.style().rhythm().secondLine();
    return AROUND + lines().size() * second + board.style().rhythm().pitch() + STRIP + AROUND;
  }

  @Override
  public void draw(Svg svg, double top) {
    Style style = board.style();
    ForestColumns columns = board.columns();
    svg.open("g", "data-part", "series").element("title", SeriesWords.full(board.forest(), row));
    svg.line(columns.labelLeft(), top, style.sheet().right(), top, Ink.HAIR, 0.8);
    double y = top + AROUND;
    row.href().ifPresent(href -> svg.open("a", "href", href));
    for (Line line : lines()) {
      double baseline = y + style.rhythm().secondLine() / 2 + line.lettering().middleToBaseline();
      svg.text(columns.labelLeft(), baseline, Svg.Anchor.START, line.lettering(), line.text());
      y += style.rhythm().secondLine();
    }
    row.href().ifPresent(href -> svg.close("a"));
    double middle = y + style.rhythm().pitch() / 2 + 2;
    board.spans().draw(svg, row.span(), columns.spanLeft(), middle - 1);
    double baseline = middle + style.text().middleToBaseline();
    if (countsFitBeside() && !row.counts().isBlank()) {
      svg.text(countsLeft(), baseline, Svg.Anchor.START, style.small(), row.counts());
    }
    svg.text(columns.valuesRight(), baseline, Svg.Anchor.END, style.bold(), values());
    y += style.rhythm().pitch();
    board.grid(svg, y, y + STRIP);
    SeriesMarks.draw(svg, board, row, y + STRIP / 2);
    svg.close("g");
  }
}
