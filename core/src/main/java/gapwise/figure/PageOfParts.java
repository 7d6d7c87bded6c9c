package gapwise.figure;

import gapwise.budget.Work;
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
    List<Part> strip,
    List<Part> head,
    List<Part> plotted,
    Optional<Part> axis,
    List<Part> tail,
    List<Part> foot,
    double margin) {
  static double sum(List<? extends Part> parts) {
    return parts.stream().mapToDouble(Part::height).sum();
  }

  /** Room above the head and below the foot. */
  static double margins(double margin) {
    return margin * 1.5;
  }

  double height() {
    return sum(strip)
        + margins(margin)
        + sum(head)
        + sum(plotted)
        + axis.map(Part::height).orElse(0.0)
        + sum(tail)
        + sum(foot);
  }

  void draw(Svg svg, Board board, double pageHeight, String pageWords) {
    double y = stack(svg, strip, 0);
    y = stack(svg, head, y + margin * 0.7);
    if (!board.style().sheet().stacked() && !plotted.isEmpty()) {
      board.grid(svg, y, y + sum(plotted));
    }
    y = stack(svg, plotted, y);
    if (axis.isPresent()) {
      y = stack(svg, List.of(axis.get()), y);
    }
    stack(svg, tail, y);
    stack(svg, foot, pageHeight - margin * 0.8 - sum(foot));
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

  /** Draws parts under each other and gives the height at which they end. */
  static double stack(Svg svg, List<Part> parts, double top) {
    double y = top;
    for (Part part : parts) {
      Work.check();
      part.draw(svg, y);
      y += part.height();
    }
    return y;
  }
}
