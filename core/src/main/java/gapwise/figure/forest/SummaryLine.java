package gapwise.figure.forest;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.value.Shown;
import java.util.List;

/**
 * A pooled value: rhombus with its hatched band below, set in columns or stacked. The plot stands
 * beside the words in columns and under them on a phone.
 */
record SummaryLine(Board board, ForestSummary.Pooled pooled, boolean overall) implements PagePart {
  private static final double PHONE_STRIP = 34;

  private boolean stacked() {
    return board.style().sheet().stacked();
  }

  private List<String> labelLines() {
    double room = board.columns().labelRoom();
    if (stacked()) {
      room -= board.style().bold().width(values()) + 10;
    }
    return TextMeasure.wrap(pooled.label(), board.style().bold(), room, 2);
  }

  private double line() {
    return line(board);
  }

  private static double line(Board board) {
    return board.style().type().text() * 1.32;
  }

  private double before() {
    return board.style().type().text() * (overall ? 0.9 : 0.25);
  }

  private double wordsHeight() {
    return Math.max(labelLines().size() + 1, 2) * line();
  }

  @Override
  public double height() {
    double marks = line() + bandHeight(board) + 6;
    double words = wordsHeight() + (stacked() ? PHONE_STRIP : 0);
    return before() + Math.max(words, marks) + board.style().type().text() * 0.35;
  }

  private static double bandHeight(Board board) {
    return Math.max(5, board.style().rhythm().bone() * 0.5);
  }

  private String values() {
    return Shown.estimate(board.forest().measure(), pooled.estimate());
  }

  @Override
  public void draw(Svg svg, double top) {
    Style style = board.style();
    ForestColumns columns = board.columns();
    double middle = top + before() + line() / 2;
    svg.open("g", "data-part", "pooled");
    if (overall) {
      svg.line(columns.blockLeft(), top + 3, style.sheet().right(), top + 3, Ink.INK, 0.8);
    }
    Lettering bold = style.bold();
    double y = middle;
    for (String each : labelLines()) {
      svg.text(columns.labelLeft(), y + bold.middleToBaseline(), Svg.Anchor.START, bold, each);
      y += line();
    }
    svg.text(
        columns.valuesRight(), middle + bold.middleToBaseline(), Svg.Anchor.END, bold, values());
    evidence(svg, middle, y);
    double strip = stacked() ? top + before() + wordsHeight() : 0;
    if (stacked()) {
      board.grid(svg, strip, strip + PHONE_STRIP);
    }
    marks(svg, board, pooled, stacked() ? strip + 11 : middle);
    svg.close("g");
  }

  /** Number of series and people, and where a new centre is likely to lie. */
  private void evidence(Svg svg, double middle, double underLabel) {
    Lettering small = board.style().small();
    ForestColumns columns = board.columns();
    List<String> size = pooled.size();
    double second = stacked() ? underLabel : middle + line();
    if (stacked()) {
      svg.text(
          columns.labelLeft(),
          second + small.middleToBaseline(),
          Svg.Anchor.START,
          small,
          String.join(", ", size));
    } else {
      for (int i = 0; i < size.size(); i++) {
        double baseline = middle + i * line() + small.middleToBaseline();
        svg.text(columns.countsRight(), baseline, Svg.Anchor.END, small, size.get(i));
      }
    }
    pooled
        .prediction()
        .ifPresent(
            limits ->
                svg.text(
                    columns.valuesRight(),
                    second + small.middleToBaseline(),
                    Svg.Anchor.END,
                    small,
                    ForestColumns.newCentre(board.forest(), limits)));
  }

  /** Rhombus and band around and under a height. */
  static void marks(Svg svg, Board board, ForestSummary.Pooled pooled, double middle) {
    double half = Math.min(line(board) / 2 - 1, board.style().rhythm().lensRadius() * 0.85);
    Marks.rhombus(svg, board.axis(), pooled.estimate(), middle, half);
    pooled
        .prediction()
        .ifPresent(
            limits -> Marks.band(svg, board.axis(), limits, middle + half + 3, bandHeight(board)));
  }
}
