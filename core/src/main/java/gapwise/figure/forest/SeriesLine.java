package gapwise.figure.forest;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;

/** One series set in columns. */
record SeriesLine(Board board, ForestRow row) implements PagePart {

  private List<String> nameLines() {
    Style style = board.style();
    int most = style.rhythm().nameLines();
    return TextMeasure.wrap(row.study(), style.text(), board.columns().labelRoom(), most);
  }

  /** The detail stands under the name where rows are roomy; else only in the full words. */
  private List<String> detailLines() {
    Style style = board.style();
    if (row.detail().isBlank() || style.rhythm().nameLines() < 2 || style.sheet().landscape()) {
      return List.of();
    }
    return TextMeasure.wrap(row.detail(), style.small(), board.columns().labelRoom(), 2);
  }

  private double nameLeading() {
    return board.style().type().text() * 1.25;
  }

  @Override
  public double height() {
    Style.Rhythm rhythm = board.style().rhythm();
    return rhythm.pitch()
        + (nameLines().size() - 1) * nameLeading()
        + detailLines().size() * rhythm.secondLine();
  }

  @Override
  public void draw(Svg svg, double top) {
    Style style = board.style();
    ForestColumns columns = board.columns();
    double middle = top + style.rhythm().pitch() / 2;
    svg.open("g", "data-part", "series").element("title", SeriesWords.full(board.forest(), row));
    name(svg, middle);
    double baseline = middle + style.text().middleToBaseline();
    board.span(svg, row.span(), middle);
    if (!row.counts().isBlank()) {
      String counts = TextMeasure.shorten(row.counts(), style.text(), columns.countsRoom());
      svg.text(columns.countsRight(), baseline, Svg.Anchor.END, style.text(), counts);
    }
    SeriesMarks.draw(svg, board, row, middle);
    String values = Shown.estimate(board.forest().measure(), row.estimate());
    svg.text(columns.valuesRight(), baseline, Svg.Anchor.END, style.text(), values);
    svg.close("g");
  }

  private void name(Svg svg, double middle) {
    Style style = board.style();
    List<String> lines = new ArrayList<>(nameLines());
    double y = middle;
    row.href().ifPresent(href -> svg.open("a", "href", href));
    for (String line : lines) {
      double baseline = y + style.text().middleToBaseline();
      svg.text(board.columns().labelLeft(), baseline, Svg.Anchor.START, style.text(), line);
      y += nameLeading();
    }
    row.href().ifPresent(href -> svg.close("a"));
    y += style.rhythm().secondLine() - nameLeading();
    for (String line : detailLines()) {
      double baseline = y + style.small().middleToBaseline();
      svg.text(board.columns().labelLeft(), baseline, Svg.Anchor.START, style.small(), line);
      y += style.rhythm().secondLine();
    }
  }
}
