package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Map;

/** The numbers under the axis, which way is which, and the names of thresholds. */
record AxisFoot(Board board) implements PagePart {
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
    return words.isBlank() ? "" : "\u2190\u00a0" + words;
  }

  private String higher() {
    String words = board.forest().axis().higher();
    return words.isBlank() ? "" : words + "\u00a0\u2192";
  }

  private double centre() {
    return (board.axis().left() + board.axis().right()) / 2;
  }

  private double apart() {
    return small().size() * 0.6;
  }

  /** Room for the words of one direction under the plot: its half, or all of it for one alone. */
  private double underPlotRoom() {
    boolean both = !lower().isEmpty() && !higher().isEmpty();
    double width = board.axis().right() - board.axis().left();
    return both ? width / 2 - apart() : width;
  }

  /** Whether both words of direction fit under their half of the plot. */
  private boolean underPlot() {
    double room = underPlotRoom();
    return small().width(lower()) <= room && small().width(higher()) <= room;
  }

  private List<String> lowerLines() {
    double room = underPlot() ? underPlotRoom() : centre() - board.columns().blockLeft() - apart();
    return lower().isEmpty() ? List.of() : TextMeasure.wrap(lower(), small(), room);
  }

  private List<String> higherLines() {
    double room =
        underPlot() ? underPlotRoom() : board.style().sheet().right() - centre() - apart();
    return higher().isEmpty() ? List.of() : TextMeasure.wrap(higher(), small(), room);
  }

  private int directionLines() {
    return Math.max(lowerLines().size(), higherLines().size());
  }

  private List<String> thresholds() {
    return board.forest().axis().thresholds().stream()
        .flatMap(
            line ->
                TextMeasure.wrap(
                    say(
                        "figure.dashed-line",
                        Map.of(
                            "value",
                            Shown.value(board.forest().measure(), line.value()),
                            "name",
                            line.words())),
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
    if (underPlot()) {
      side(svg, lowerLines(), board.axis().left(), Svg.Anchor.START, y);
      side(svg, higherLines(), board.axis().right(), Svg.Anchor.END, y);
    } else {
      side(svg, lowerLines(), centre() - apart(), Svg.Anchor.END, y);
      side(svg, higherLines(), centre() + apart(), Svg.Anchor.START, y);
    }
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
