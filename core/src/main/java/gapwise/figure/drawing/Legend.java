package gapwise.figure.drawing;

import java.util.ArrayList;
import java.util.List;

/** Marks beside their words, as many on a line as fit. */
public record Legend(Style style, List<Entry> entries) implements PagePart {
  /** Room for a usual mark. */
  static final double SWATCH = 34;

  /**
   * A mark drawn into a swatch (x, middle), and its words.
   *
   * @param room kept for the mark
   */
  public record Entry(Swatch swatch, String words, double room) {
    public Entry(Swatch swatch, String words) {
      this(swatch, words, SWATCH);
    }
  }

  /** Draws a mark with its left edge at x. */
  public interface Swatch {
    void draw(Svg svg, double x, double middle);
  }

  private record Placed(Entry entry, double x, int line) {}

  public Legend {
    entries = List.copyOf(entries);
  }

  /** Where height is scarce: on slides and in print. */
  private boolean onPaper() {
    return !style.sheet().onScreen();
  }

  private double line() {
    return style.type().small() * (onPaper() ? 1.5 : 1.75);
  }

  private List<Placed> placed() {
    List<Placed> placed = new ArrayList<>();
    Style.Sheet sheet = style.sheet();
    double x = sheet.margin();
    int line = 0;
    for (Entry entry : entries) {
      double width = entry.room() + style.small().width(entry.words());
      if (x > sheet.margin() && x + width > sheet.right()) {
        x = sheet.margin();
        line++;
      }
      placed.add(new Placed(entry, x, line));
      x += width + style.type().small() * 2;
      int wrapped = words(entry).size();
      if (wrapped > 1) {
        line += wrapped;
        x = sheet.margin();
      }
    }
    return placed;
  }

  private List<String> words(Entry entry) {
    double room = style.sheet().room() - entry.room();
    return TextMeasure.wrap(entry.words(), style.small(), room);
  }

  @Override
  public double height() {
    List<Placed> placed = placed();
    Placed last = placed.get(placed.size() - 1);
    double after = onPaper() ? 0.3 : 0.6;
    return (last.line() + words(last.entry()).size() + after) * line();
  }

  @Override
  public void draw(Svg svg, double top) {
    Lettering small = style.small();
    svg.open("g", "data-part", "key");
    for (Placed each : placed()) {
      double middle = top + line() * (each.line() + 1.0);
      each.entry().swatch().draw(svg, each.x(), middle);
      for (String words : words(each.entry())) {
        double x = each.x() + each.entry().room();
        svg.text(x, middle + small.middleToBaseline(), Svg.Anchor.START, small, words);
        middle += line();
      }
    }
    svg.close("g");
  }
}
