package gapwise.server.page.part;

import gapwise.figure.Figure;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Setting;
import java.util.List;

/**
 * One drawing as it stands in a page, for a desk and for a phone. The page says its title,
 * sentences, cautions and whether data are invented; its source stands under it.
 *
 * @param wide as SVG
 * @param narrow as SVG
 * @param source where its numbers come from, in short phrases
 */
public record TwoWidths(String wide, String narrow, List<String> source) {
  public TwoWidths {
    source = List.copyOf(source);
  }

  /** The first sheet of a figure. */
  public static TwoWidths of(Figure figure) {
    return new TwoWidths(
        inline(figure, Medium.PAGE), inline(figure, Medium.PHONE), figure.source());
  }

  private static String inline(Figure figure, Medium medium) {
    return figure.draw(Setting.withinPage(medium)).get(0).inline();
  }
}
