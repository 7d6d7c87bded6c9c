package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.List;
import java.util.Map;

/** A series that could not enter: greyed, with its reason where the plot would be. */
record LeftOutLine(Board board, ForestLeftOut row) implements PagePart {
  private Lettering soft() {
    return board.style().text().in(Ink.SOFT);
  }

  private boolean stacked() {
    return board.style().sheet().stacked();
  }

  private double line() {
    return board.style().type().text() * 1.28;
  }

  private List<String> nameLines() {
    int most = stacked() ? 3 : board.style().rhythm().nameLines();
    return TextMeasure.wrap(row.study(), soft(), board.columns().labelRoom(), most);
  }

  private List<String> reasonLines() {
    Style style = board.style();
    ForestColumns columns = board.columns();
    double room = stacked() ? style.sheet().room() : columns.valuesRight() - columns.plotLeft();
    return TextMeasure.wrap(row.reason(), style.small(), room);
  }

  @Override
  public double height() {
    int lines =
        stacked()
            ? nameLines().size() + reasonLines().size() + (row.counts().isBlank() ? 0 : 1)
            : Math.max(nameLines().size(), reasonLines().size());
    double least = stacked() ? 0 : board.style().rhythm().pitch();
    return Math.max(least, lines * line() + board.style().type().text() * 0.6);
  }

  @Override
  public void draw(Svg svg, double top) {
    ForestColumns columns = board.columns();
    String title =
        say("figure.left-out-because", Map.of("series", row.study(), "reason", row.reason()));
    svg.open("g", "data-part", "left-out").element("title", title);
    double middle = top + (stacked() ? line() * 0.8 : board.style().rhythm().pitch() / 2);
    row.href().ifPresent(href -> svg.open("a", "href", href));
    double y = lines(svg, nameLines(), columns.labelLeft(), soft(), middle);
    row.href().ifPresent(href -> svg.close("a"));
    Lettering small = board.style().small();
    if (stacked()) {
      y =
          row.counts().isBlank()
              ? y
              : lines(svg, List.of(row.counts()), columns.labelLeft(), small, y);
      lines(svg, reasonLines(), columns.labelLeft(), small, y);
    } else {
      board.span(svg, row.span(), middle);
      if (!row.counts().isBlank()) {
        double baseline = middle + soft().middleToBaseline();
        svg.text(columns.countsRight(), baseline, Svg.Anchor.END, soft(), row.counts());
      }
      lines(svg, reasonLines(), columns.plotLeft(), small, middle);
    }
    svg.close("g");
  }

  private double lines(Svg svg, List<String> lines, double x, Lettering lettering, double middle) {
    double y = middle;
    for (String each : lines) {
      svg.text(x, y + lettering.middleToBaseline(), Svg.Anchor.START, lettering, each);
      y += line();
    }
    return y;
  }
}
