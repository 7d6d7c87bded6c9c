package gapwise.figure.forest;

import gapwise.figure.drawing.Axis;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.List;

/** The name over a block; in long figures with the ticks of the axis beside or under it. */
record BlockHead(Board board, String name, boolean first) implements PagePart {
  private Lettering lettering() {
    return Lettering.bold(board.style().type().text() + 0.5);
  }

  private double before() {
    double close = board.style().sheet().landscape() ? 0.6 : 1;
    return board.style().type().text() * (first ? 0.45 : 0.75) * close;
  }

  private List<String> lines() {
    if (name.isBlank()) {
      return List.of();
    }
    ForestColumns columns = board.columns();
    double room =
        board.style().sheet().stacked()
            ? columns.labelRoom()
            : columns.plotLeft() - columns.blockLeft() - board.style().rhythm().lensRadius() - 4;
    return TextMeasure.wrap(name, lettering(), room, 3);
  }

  private double ticks() {
    boolean told = board.style().sheet().stacked() && board.repeatsTicks();
    return told ? board.style().type().small() * 1.5 : 0;
  }

  private double leading() {
    return lettering().size() * 1.4;
  }

  @Override
  public double height() {
    boolean empty = lines().isEmpty() && (board.style().sheet().stacked() || !board.repeatsTicks());
    return before() + (empty ? 0 : Math.max(1, lines().size())) * leading() + ticks();
  }

  @Override
  public void draw(Svg svg, double top) {
    double y = top + before();
    svg.open("g", "data-part", "block");
    for (String line : lines()) {
      double baseline = y + leading() / 2 + lettering().middleToBaseline();
      svg.text(board.columns().blockLeft(), baseline, Svg.Anchor.START, lettering(), line, line);
      y += leading();
    }
    if (!board.style().sheet().stacked() && board.repeatsTicks()) {
      double middle = top + before() + leading() / 2;
      Axis axis = board.axis();
      // The grid would run through the numbers.
      svg.rect(
          axis.left() - 2,
          middle - leading() / 2,
          axis.right() - axis.left() + 4,
          leading(),
          Ink.GROUND);
      AxisFoot.ticks(board, svg, middle);
    }
    if (ticks() > 0) {
      AxisFoot.ticks(board, svg, y + ticks() / 2);
    }
    svg.close("g");
  }
}
