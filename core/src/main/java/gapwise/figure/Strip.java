package gapwise.figure;

import java.util.List;

/** A band across the drawing that says the data are invented. */
record Strip(Board board, List<String> lines) implements Part {
  static Strip invented(Board board) {
    double room = board.style().sheet().room();
    return new Strip(board, TextMeasure.wrap(Provenance.INVENTED, lettering(board), room));
  }

  private static Lettering lettering(Board board) {
    return Lettering.plain(board.style().type().small() + 0.5);
  }

  private double line() {
    return lettering(board).size() * 1.4;
  }

  @Override
  public double height() {
    return lines.size() * line() + lettering(board).size() * 0.8;
  }

  @Override
  public void draw(Svg svg, double top) {
    Style.Sheet sheet = board.style().sheet();
    svg.rect(0, top, sheet.width(), height(), Ink.BONE);
    double middle = top + lettering(board).size() * 0.4 + line() / 2;
    for (String each : lines) {
      double baseline = middle + lettering(board).middleToBaseline();
      svg.text(sheet.margin(), baseline, Svg.Anchor.START, lettering(board), each);
      middle += line();
    }
  }
}
