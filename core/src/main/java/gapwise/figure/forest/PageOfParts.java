package gapwise.figure.forest;

import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Stack;
import gapwise.figure.drawing.Svg;
import java.util.List;
import java.util.Optional;

/**
 * One page laid out: head, plotted parts with the axis under them, then what follows, and at the
 * foot cautions and provenance.
 *
 * @param strip the band that says the data are invented
 * @param head title, sentences, column headings
 * @param plotted parts that stand over the axis
 * @param axis the axis, where something is plotted
 * @param tail left-out series, key, notes
 * @param foot cautions and provenance
 */
record PageOfParts(
    List<PagePart> strip,
    List<PagePart> head,
    List<PagePart> plotted,
    Optional<PagePart> axis,
    List<PagePart> tail,
    List<PagePart> foot,
    double margin) {
  double height() {
    return Stack.height(strip)
        + Stack.margins(margin)
        + Stack.height(head)
        + Stack.height(plotted)
        + axis.map(PagePart::height).orElse(0.0)
        + Stack.height(tail)
        + Stack.height(foot);
  }

  void draw(Svg svg, Board board, double pageHeight, String pageWords) {
    double y = Stack.draw(svg, strip, 0);
    y = Stack.draw(svg, head, y + margin * 0.7);
    if (!board.style().sheet().stacked() && !plotted.isEmpty()) {
      board.grid(svg, y, y + Stack.height(plotted));
    }
    y = Stack.draw(svg, plotted, y);
    if (axis.isPresent()) {
      y = Stack.draw(svg, List.of(axis.get()), y);
    }
    Stack.draw(svg, tail, y);
    Stack.draw(svg, foot, pageHeight - margin * 0.8 - Stack.height(foot));
    if (!pageWords.isEmpty()) {
      Lettering small = board.style().small();
      svg.text(
          board.style().sheet().right(),
          pageHeight - margin * 0.5,
          Svg.Anchor.END,
          small,
          pageWords);
    }
  }
}
