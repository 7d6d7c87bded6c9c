package gapwise.figure.ranks;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Map;

/**
 * A bar below the name of each alternative, as wide as the sheet.
 *
 * @param figure the figure
 * @param style sizes
 * @param barHeight height of a bar
 */
record RankPlot(RankShares figure, Style style, double barHeight) implements PagePart {
  private double line() {
    return style.type().text() * 1.45;
  }

  private double gap() {
    return style.type().text() * 0.55;
  }

  private double mark() {
    return style.type().text() * 0.5;
  }

  private double left() {
    return style.sheet().margin();
  }

  private double words() {
    return left() + 2 * mark() + style.type().text() * 0.6;
  }

  /** The name, and how often it comes first: on one line where both fit. */
  private boolean onOneLine(RankShares.Bar bar) {
    double room = style.sheet().right() - words();
    return style.bold().width(bar.kind().label())
            + style.text().width(bar.first())
            + style.type().text()
        <= room;
  }

  private List<String> name(RankShares.Bar bar) {
    return TextMeasure.wrap(bar.kind().label(), style.bold(), style.sheet().right() - words(), 2);
  }

  private double above(RankShares.Bar bar) {
    return line() * (onOneLine(bar) ? 1 : name(bar).size() + 1);
  }

  @Override
  public double height() {
    double names = figure.bars().stream().mapToDouble(this::above).sum();
    return gap() + names + figure.bars().size() * (barHeight + gap());
  }

  @Override
  public void draw(Svg svg, double top) {
    double y = top + gap();
    for (RankShares.Bar bar : figure.bars()) {
      svg.open("g", "data-part", "bar");
      head(svg, bar, y);
      bar(svg, bar, y + above(bar));
      svg.close("g");
      y += above(bar) + barHeight + gap();
    }
  }

  private void head(Svg svg, RankShares.Bar bar, double top) {
    Lettering bold = style.bold();
    Lettering text = style.text();
    double middle = top + line() / 2;
    MethodShape.draw(svg, bar.kind(), left() + mark(), middle, mark());
    for (String words : name(bar)) {
      svg.text(words(), middle + bold.middleToBaseline(), Svg.Anchor.START, bold, words);
      middle += line();
    }
    if (onOneLine(bar)) {
      svg.text(
          style.sheet().right(),
          middle - line() + text.middleToBaseline(),
          Svg.Anchor.END,
          text,
          bar.first());
    } else {
      svg.text(words(), middle + text.middleToBaseline(), Svg.Anchor.START, text, bar.first());
    }
  }

  private void bar(Svg svg, RankShares.Bar bar, double top) {
    double room = style.sheet().right() - left();
    svg.shape(
        "M"
            + Svg.at(left(), top)
            + "h"
            + Svg.n(room)
            + "v"
            + Svg.n(barHeight)
            + "H"
            + Svg.n(left())
            + "Z",
        "none",
        Ink.BONE_EDGE,
        1.6,
        "");
    double x = left();
    for (int rank = 0; rank < bar.shares().size(); rank++) {
      double share = bar.shares().get(rank);
      double width = share * room;
      RankShade shade = RankShade.of(rank, bar.shares().size());
      String number = Shown.of100(Math.min(1, share));
      Lettering letters = Lettering.plain(style.type().small()).in(shade.ink());
      svg.open("g", "data-part", "share");
      svg.element(
          "title",
          say(
              "figure.share-of-rank",
              Map.of(
                  "method",
                  bar.kind().label(),
                  "rank",
                  Integer.toString(rank + 1),
                  "share",
                  number)));
      if (width > 0) {
        shade.part(svg, x, top, width, barHeight);
      }
      if (letters.width(number) + style.type().small() * 0.7 < width) {
        svg.text(
            x + width / 2,
            top + barHeight / 2 + letters.middleToBaseline(),
            Svg.Anchor.MIDDLE,
            letters,
            number);
      }
      svg.close("g");
      x += width;
    }
  }
}
