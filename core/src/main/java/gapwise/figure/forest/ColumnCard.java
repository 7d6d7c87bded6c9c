package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.span.Span;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One series in a column of a paper: name and value on a line, then missing bone and counts in
 * numbers beside the plot, so that a page holds many.
 */
record ColumnCard(Board board, ForestRow row) implements PagePart {
  private static final double AROUND = 3;

  private double line() {
    return board.style().rhythm().secondLine();
  }

  private double strip() {
    return board.style().rhythm().pitch();
  }

  private String values() {
    return Shown.estimate(board.forest().measure(), row.estimate());
  }

  private List<String> nameLines() {
    double room = board.columns().labelRoom() - board.style().bold().width(values()) - line() / 2;
    return TextMeasure.wrap(row.study(), board.style().text(), room, 2);
  }

  private String numbers() {
    if (row.span() instanceof Span.NotReported) {
      return row.counts();
    }
    String length = row.span().label();
    return row.counts().isBlank()
        ? say("figure.bone-alone", Map.of("length", length))
        : say("figure.bone-and-counts", Map.of("length", length, "counts", row.counts()));
  }

  private boolean besideThePlot() {
    double lens = board.style().rhythm().lensRadius();
    double room = board.columns().plotLeft() - lens - board.columns().labelLeft();
    return board.style().small().width(numbers()) <= room;
  }

  private List<String> smallLines() {
    Lettering small = board.style().small();
    double room = board.columns().labelRoom();
    List<String> lines = new ArrayList<>();
    if (!row.detail().isBlank()) {
      lines.addAll(TextMeasure.wrap(row.detail(), small, room, 2));
    }
    if (!besideThePlot()) {
      lines.addAll(TextMeasure.wrap(numbers(), small, room, 2));
    }
    return lines;
  }

  @Override
  public double height() {
    return 2 * AROUND + (nameLines().size() + smallLines().size()) * line() + strip();
  }

  @Override
  public void draw(Svg svg, double top) {
    Style style = board.style();
    ForestColumns columns = board.columns();
    svg.open("g", "data-part", "series").element("title", SeriesWords.full(board.forest(), row));
    svg.line(columns.labelLeft(), top, style.sheet().right(), top, Ink.HAIR, 0.8);
    double middle = top + AROUND + line() / 2;
    text(svg, columns.valuesRight(), middle, Svg.Anchor.END, style.bold(), values());
    row.href().ifPresent(href -> svg.open("a", "href", href));
    for (String each : nameLines()) {
      text(svg, columns.labelLeft(), middle, Svg.Anchor.START, style.text(), each);
      middle += line();
    }
    row.href().ifPresent(href -> svg.close("a"));
    for (String each : smallLines()) {
      text(svg, columns.labelLeft(), middle, Svg.Anchor.START, style.small(), each);
      middle += line();
    }
    double upper = middle - line() / 2;
    board.grid(svg, upper, upper + strip());
    if (besideThePlot() && !numbers().isBlank()) {
      double across = upper + strip() / 2;
      text(svg, columns.labelLeft(), across, Svg.Anchor.START, style.small(), numbers());
    }
    SeriesMarks.draw(svg, board, row, upper + strip() / 2);
    svg.close("g");
  }

  private static void text(
      Svg svg, double x, double middle, Svg.Anchor anchor, Lettering lettering, String words) {
    svg.text(x, middle + lettering.middleToBaseline(), anchor, lettering, words);
  }
}
