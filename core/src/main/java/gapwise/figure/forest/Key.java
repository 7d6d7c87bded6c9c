package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.Legend.Entry;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.Svg;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How to read the marks that occur in the figure, each drawn beside its words. */
final class Key {
  private final Board board;
  private final Forest forest;
  private final List<Entry> entries = new ArrayList<>();

  private Key(Board board) {
    this.board = board;
    this.forest = board.forest();
  }

  /** Of series and pooled values. */
  static Legend of(Board board) {
    return new Key(board).series().pooled().bound().noEffect().beyondAxis().bone().legend();
  }

  /** Of pooled values that stand alone. */
  static Legend ofPooled(Board board) {
    return new Key(board).pooled().noEffect().legend();
  }

  /** Of series whose pooled values stand on a page before. */
  static Legend ofSeries(Board board) {
    return new Key(board).series().bound().noEffect().beyondAxis().bone().legend();
  }

  private Legend legend() {
    return new Legend(board.style(), entries);
  }

  private Key series() {
    if (forest.rows().stream().anyMatch(row -> row.estimate().intervalKnown())) {
      boolean weighted = board.greatestWeight() > 0;
      entries.add(
          new Entry(
              Key::series, say(weighted ? "figure.key-weighted-series" : "figure.key-series")));
    }
    if (forest.rows().stream().anyMatch(row -> !row.estimate().intervalKnown())) {
      entries.add(
          new Entry(
              (svg, x, middle) -> Marks.ring(svg, x + 14, middle, 4),
              say("figure.key-without-deviation")));
    }
    return this;
  }

  private Key pooled() {
    if (!forest.pooled().isEmpty()) {
      entries.add(new Entry(Key::pooled, say("figure.key-pooled")));
    }
    if (forest.pooled().stream().anyMatch(pooled -> pooled.prediction().isPresent())) {
      entries.add(
          new Entry(
              (svg, x, middle) -> Marks.hatched(svg, x, middle - 3.5, 28, 7),
              say("figure.key-new-centre")));
    }
    return this;
  }

  private Key bound() {
    if (forest.rows().stream().anyMatch(row -> row.openEnd() != ForestRow.OpenEnd.NONE)) {
      entries.add(
          new Entry(
              (svg, x, middle) -> {
                svg.rect(x, middle - 2, 20, 4, Ink.BONE_GREY);
                Marks.lensAtBound(svg, x + 20, middle, 4);
              },
              say("figure.key-bound")));
    }
    return this;
  }

  private Key noEffect() {
    if (forest.measure().noEffect().isPresent()) {
      entries.add(
          new Entry(
              (svg, x, middle) ->
                  svg.dashed(x + 14, middle - 8, x + 14, middle + 8, Ink.INK, 1.1, "1.2 3"),
              say("figure.key-no-effect")));
    }
    return this;
  }

  private Key beyondAxis() {
    if (leaves(board)) {
      entries.add(
          new Entry(
              (svg, x, middle) -> {
                svg.rect(x + 8, middle - 2, 18, 4, Ink.BONE_GREY);
                svg.path(
                    "M"
                        + Svg.at(x + 8, middle - 4.5)
                        + "L"
                        + Svg.at(x + 1, middle)
                        + "L"
                        + Svg.at(x + 8, middle + 4.5)
                        + "Z",
                    Ink.BONE_GREY);
              },
              say("figure.key-beyond-axis")));
    }
    return this;
  }

  private Key bone() {
    if (!board.columns().bonesDrawn()) {
      return this;
    }
    double scale = board.spans().unitsPerCentimetre();
    double bar = board.spans().scaleBarCentimetres(60);
    entries.add(
        new Entry(
            (svg, x, middle) -> {
              double end = x + bar * scale;
              svg.stroke(
                  "M"
                      + Svg.at(x, middle - 3)
                      + "V"
                      + Svg.n(middle + 3)
                      + "M"
                      + Svg.at(x, middle)
                      + "H"
                      + Svg.n(end)
                      + "M"
                      + Svg.at(end, middle - 3)
                      + "V"
                      + Svg.n(middle + 3),
                  Ink.SOFT,
                  1);
            },
            say("figure.key-bone", Map.of("length", Shown.centimetres(bar))),
            bar * scale + 6));
    return this;
  }

  private static boolean leaves(Board board) {
    return board.forest().rows().stream()
        .map(row -> row.estimate().limits())
        .anyMatch(
            limits -> !board.axis().covers(limits.lower()) || !board.axis().covers(limits.upper()));
  }

  private static void series(Svg svg, double x, double middle) {
    svg.rect(x, middle - 2, 28, 4, Ink.BONE_GREY);
    Marks.lens(svg, x + 14, middle, 7);
  }

  private static void pooled(Svg svg, double x, double middle) {
    svg.path(
        "M"
            + Svg.at(x, middle)
            + "L"
            + Svg.at(x + 14, middle - 6)
            + "L"
            + Svg.at(x + 28, middle)
            + "L"
            + Svg.at(x + 14, middle + 6)
            + "Z",
        Ink.ACCENT);
  }
}
