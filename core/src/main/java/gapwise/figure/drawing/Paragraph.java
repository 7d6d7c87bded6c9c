package gapwise.figure.drawing;

import java.util.List;

/**
 * Wrapped text.
 *
 * @param lines its lines
 * @param x left edge
 * @param lettering of all lines
 * @param before room kept above
 * @param rule whether an upright rule stands at its left, as beside a caution
 */
public record Paragraph(
    List<String> lines, double x, Lettering lettering, double before, boolean rule)
    implements PagePart {
  private static final double LEADING = 1.36;

  public static Paragraph of(
      String text, double x, double room, Lettering lettering, double before) {
    return new Paragraph(TextMeasure.wrap(text, lettering, room), x, lettering, before, false);
  }

  public static Paragraph caution(String text, double x, double room, Lettering lettering) {
    double indent = lettering.size() * 0.9;
    List<String> lines = TextMeasure.wrap(text, lettering, room - indent);
    return new Paragraph(lines, x, lettering, lettering.size() * 0.4, true);
  }

  private double leading() {
    return lettering.size() * LEADING;
  }

  @Override
  public double height() {
    return before + lines.size() * leading();
  }

  @Override
  public void draw(Svg svg, double top) {
    double indent = rule ? lettering.size() * 0.9 : 0;
    double y = top + before;
    if (rule) {
      svg.rect(x, y + 1.5, 2.4, lines.size() * leading() - 3, Ink.ACCENT);
    }
    for (String line : lines) {
      double baseline = y + leading() / 2 + lettering.middleToBaseline();
      svg.text(x + indent, baseline, Svg.Anchor.START, lettering, line);
      y += leading();
    }
  }
}
