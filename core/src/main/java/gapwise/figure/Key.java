package gapwise.figure;

import java.util.ArrayList;
import java.util.List;

/** How to read the marks that occur in the figure, each drawn beside its words. */
record Key(Board board, List<Entry> entries) implements Part {
  private static final double SWATCH = 34;

  /** A mark drawn into a swatch (x, middle), and its words. */
  record Entry(Swatch swatch, String words) {}

  /** Draws a mark with its left edge at x. */
  interface Swatch {
    void draw(Svg svg, double x, double middle);
  }

  private record Placed(Entry entry, double x, int line) {}

  static Key of(Board board) {
    Forest forest = board.forest();
    List<Entry> entries = new ArrayList<>();
    if (forest.rows().stream().anyMatch(row -> row.estimate().intervalKnown())) {
      boolean weighted = board.greatestWeight() > 0;
      String area = weighted ? "; its area is the share of information" : "";
      entries.add(new Entry(Key::series, "one series with its interval" + area));
    }
    if (forest.rows().stream().anyMatch(row -> !row.estimate().intervalKnown())) {
      entries.add(
          new Entry(
              (svg, x, middle) -> Marks.ring(svg, x + 14, middle, 4),
              "no standard deviation reported, so not pooled"));
    }
    if (!forest.pooled().isEmpty()) {
      entries.add(new Entry(Key::pooled, "pooled value with its interval"));
    }
    if (forest.pooled().stream().anyMatch(pooled -> pooled.prediction().isPresent())) {
      entries.add(
          new Entry(
              (svg, x, middle) -> Marks.hatched(svg, x, middle - 3.5, 28, 7),
              "where a new centre is likely to lie"));
    }
    if (forest.rows().stream().anyMatch(row -> row.openEnd() != Row.OpenEnd.NONE)) {
      entries.add(
          new Entry(
              (svg, x, middle) -> {
                svg.rect(x, middle - 2, 20, 4, Ink.BONE_GREY);
                Marks.lensAtBound(svg, x + 20, middle, 4);
              },
              "all or none of a series: the end is the bound of the scale, not a limit"));
    }
    if (forest.measure().noEffect().isPresent()) {
      entries.add(
          new Entry(
              (svg, x, middle) ->
                  svg.dashed(x + 14, middle - 8, x + 14, middle + 8, Ink.INK, 1.1, "1.2 3"),
              "no effect"));
    }
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
              "interval goes on beyond the axis"));
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
            Shown.centimetres(bar) + " cm of bone"));
    return new Key(board, List.copyOf(entries));
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

  private double swatchRoom(Entry entry) {
    boolean scaleBar = entry.equals(entries.get(entries.size() - 1));
    double bar = board.spans().scaleBarCentimetres(60) * board.spans().unitsPerCentimetre();
    return scaleBar ? bar + 6 : SWATCH;
  }

  private double line() {
    return board.style().type().small() * 1.75;
  }

  private List<Placed> placed() {
    List<Placed> placed = new ArrayList<>();
    Style.Sheet sheet = board.style().sheet();
    double x = sheet.margin();
    int line = 0;
    for (Entry entry : entries) {
      double width = swatchRoom(entry) + board.style().small().width(entry.words());
      if (x > sheet.margin() && x + width > sheet.right()) {
        x = sheet.margin();
        line++;
      }
      placed.add(new Placed(entry, x, line));
      x += width + board.style().type().small() * 2;
      int wrapped = words(entry).size();
      if (wrapped > 1) {
        line += wrapped;
        x = sheet.margin();
      }
    }
    return placed;
  }

  private List<String> words(Entry entry) {
    double room = board.style().sheet().room() - swatchRoom(entry);
    return TextMeasure.wrap(entry.words(), board.style().small(), room);
  }

  @Override
  public double height() {
    List<Placed> placed = placed();
    Placed last = placed.get(placed.size() - 1);
    return (last.line() + words(last.entry()).size()) * line() + line() * 0.6;
  }

  @Override
  public void draw(Svg svg, double top) {
    Lettering small = board.style().small();
    svg.open("g", "data-part", "key");
    for (Placed each : placed()) {
      double middle = top + line() * (each.line() + 1.0);
      each.entry().swatch().draw(svg, each.x(), middle);
      for (String words : words(each.entry())) {
        double x = each.x() + swatchRoom(each.entry());
        svg.text(x, middle + small.middleToBaseline(), Svg.Anchor.START, small, words);
        middle += line();
      }
    }
    svg.close("g");
  }
}
