package gapwise.figure.forest;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Stack;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.page.PageNumber;
import java.util.List;
import java.util.Optional;

/**
 * One page laid out: head, plotted parts with the axis under them, then what follows; at the foot
 * cautions and provenance, which tell the number of the page.
 *
 * @param board what its parts share
 * @param strip the band that says the data are invented
 * @param head title, sentences, column headings
 * @param plotted parts that stand over the axis
 * @param axis the axis, where something is plotted
 * @param tail left-out series, key, notes
 */
record PageOfParts(
    Board board,
    List<PagePart> strip,
    List<PagePart> head,
    List<PagePart> plotted,
    Optional<PagePart> axis,
    List<PagePart> tail) {
  /** Of the room left, rows take this share; the rest parts what follows from the foot. */
  private static final double FOR_ROWS = 0.85;

  /** A row grows by no more than this many times its usual height. */
  private static final double MOST_MORE = 1;

  private Style.Sheet sheet() {
    return board.style().sheet();
  }

  double height(PageNumber number) {
    return heightOver(FigureWords.foot(board, number));
  }

  private double heightOver(List<PagePart> foot) {
    return Stack.height(strip)
        + Stack.margins(sheet().margin())
        + Stack.height(head)
        + Stack.height(plotted)
        + axis.map(PagePart::height).orElse(0.0)
        + Stack.height(tail)
        + Stack.height(foot);
  }

  /** The same with the rows further apart, so that they fill a sheet of fixed height. */
  PageOfParts spread() {
    double left = sheet().fixedHeight().orElse(0) - heightOver(FigureWords.footOfMany(board));
    double most = board.style().rhythm().pitch() * MOST_MORE;
    double more = Math.min(most, FOR_ROWS * left / Math.max(1, plotted.size()));
    return more <= 0
        ? this
        : new PageOfParts(
            board,
            strip,
            head,
            plotted.stream().<PagePart>map(part -> roomy(part, more)).toList(),
            axis,
            tail);
  }

  /** The name of a block stays near its first row, and the first one near the top. */
  private PagePart roomy(PagePart part, double more) {
    if (part instanceof BlockHead) {
      return new Roomy(part, part.equals(plotted.get(0)) ? 0 : more / 2, 0);
    }
    return new Roomy(part, more / 2, more / 2);
  }

  /** A part with more room above and below it. */
  private record Roomy(PagePart part, double above, double below) implements PagePart {
    @Override
    public double height() {
      return above + part.height() + below;
    }

    @Override
    public void draw(Svg svg, double top) {
      part.draw(svg, top + above);
    }
  }

  void draw(Svg svg, double pageHeight, PageNumber number) {
    double y = Stack.draw(svg, strip, 0);
    y = Stack.draw(svg, head, y + sheet().margin() * 0.7);
    if (!sheet().stacked() && !plotted.isEmpty()) {
      board.grid(svg, y, y + Stack.height(plotted));
    }
    y = Stack.draw(svg, plotted, y);
    if (axis.isPresent()) {
      y = Stack.draw(svg, List.of(axis.get()), y);
    }
    double below = Stack.draw(svg, tail, y);
    List<PagePart> foot = FigureWords.foot(board, number);
    double atTheFoot = pageHeight - sheet().margin() * 0.8 - Stack.height(foot);
    // What must be known stands near the result, also where that leaves most of a page empty.
    boolean alone = !number.ofMany() && !sheet().landscape();
    Stack.draw(svg, foot, alone ? Math.min(atTheFoot, below) : atTheFoot);
  }
}
