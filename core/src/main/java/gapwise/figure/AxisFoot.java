package gapwise.figure;

import java.util.List;

/** The numbers under the axis, which way is which, and the names of thresholds. */
record AxisFoot(Board board) implements Part {
  private Lettering small() {
    return board.style().small();
  }

  private double line() {
    return board.style().type().small() * 1.45;
  }

  /** Numbers of the ticks on one line; where they would touch, every second stays. */
  static void ticks(Board board, Svg svg, double middle) {
    Lettering small = board.style().small();
    double[] at = board.axis().tickPositions();
    List<String> words = board.axis().tickWords();
    double free = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < at.length; i++) {
      double half = small.width(words.get(i)) / 2;
      if (at[i] - half > free) {
        double baseline = middle + small.middleToBaseline();
        svg.text(at[i], baseline, Svg.Anchor.MIDDLE, small, words.get(i));
        free = at[i] + half + small.size() * 0.4;
      }
    }
  }

  private String lower() {
    String words = board.forest().axis().lower();
    return words.isBlank() ? "" : "\u2190 " + words;
  }

  private String higher() {
    String words = board.forest().axis().higher();
    return words.isBlank() ? "" : words + " \u2192";
  }

  /** Room for the words of direction: on both sides of the plot as far as the page allows. */
  private List<String> lines(String words) {
    return words.isEmpty() ? List.of() : TextMeasure.wrap(words, small(), halfRoom());
  }

  private double halfRoom() {
    return (board.axis().right() - board.axis().left()) / 2 - small().size() * 0.6;
  }

  private int directionLines() {
    return Math.max(lines(lower()).size(), lines(higher()).size());
  }

  private List<String> thresholds() {
    return board.forest().axis().thresholds().stream()
        .flatMap(
            line ->
                TextMeasure.wrap(
                    "Dashed line at "
                        + Shown.value(board.forest().measure(), line.value())
                        + ": "
                        + line.words(),
                    small(),
                    board.axis().right() - board.axis().left())
                    .stream())
        .toList();
  }

  @Override
  public double height() {
    return line() * (1.2 + directionLines() + thresholds().size()) + small().size() * 0.4;
  }

  @Override
  public void draw(Svg svg, double top) {
    svg.open("g", "data-part", "axis");
    double middle = top + line() * 0.6;
    ticks(board, svg, middle);
    double y = middle + line();
    side(svg, lines(lower()), board.axis().left(), Svg.Anchor.START, y);
    side(svg, lines(higher()), board.axis().right(), Svg.Anchor.END, y);
    side(svg, thresholds(), board.axis().left(), Svg.Anchor.START, y + directionLines() * line());
    svg.close("g");
  }

  private void side(Svg svg, List<String> lines, double x, Svg.Anchor anchor, double middle) {
    for (int i = 0; i < lines.size(); i++) {
      double baseline = middle + i * line() + small().middleToBaseline();
      svg.text(x, baseline, anchor, small(), lines.get(i));
    }
  }
}
