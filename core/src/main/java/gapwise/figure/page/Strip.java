package gapwise.figure.page;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.List;

/** A band across the drawing that says the data are invented. */
public record Strip(Style style, List<String> lines) implements PagePart {
  /** Of a figure: none where its data are not invented, or where the page round it says so. */
  public static List<PagePart> of(FigureProvenance provenance, Style style) {
    if (!provenance.demonstration() || style.sheet().withinPage()) {
      return List.of();
    }
    double room = style.sheet().room();
    List<String> lines = TextMeasure.wrap(FigureProvenance.INVENTED, lettering(style), room);
    return List.of(new Strip(style, lines));
  }

  private static Lettering lettering(Style style) {
    return style.caution();
  }

  private double line() {
    return lettering(style).size() * 1.4;
  }

  @Override
  public double height() {
    return lines.size() * line() + lettering(style).size() * 0.8;
  }

  @Override
  public void draw(Svg svg, double top) {
    Style.Sheet sheet = style.sheet();
    svg.rect(0, top, sheet.width(), height(), Ink.BONE);
    double middle = top + lettering(style).size() * 0.4 + line() / 2;
    for (String each : lines) {
      double baseline = middle + lettering(style).middleToBaseline();
      svg.text(sheet.margin(), baseline, Svg.Anchor.START, lettering(style), each);
      middle += line();
    }
  }
}
