package gapwise.figure.forest;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.file.FigureMetadata;
import gapwise.figure.page.PageNumber;
import java.util.AbstractList;
import java.util.List;

/** Draws forest plots: the same value gives the same bytes on every machine. */
public final class ForestDrawing {
  private ForestDrawing() {}

  /**
   * Draws the figure on as many sheets as it takes, each with its headings, axis, cautions and
   * provenance. A screen and a phone get one drawing as tall as it needs, and more only where it
   * has hundreds of series. A sheet is drawn when it is taken from the list, so that one of many
   * costs no more than itself.
   */
  public static List<Picture> draw(Forest forest, Setting setting) {
    return new Sheets(ForestPages.of(forest, setting));
  }

  /** Drawings that are made when they are taken. */
  private static final class Sheets extends AbstractList<Picture> {
    private final List<PageOfParts> pages;

    Sheets(List<PageOfParts> pages) {
      this.pages = pages;
    }

    @Override
    public Picture get(int index) {
      return picture(pages.get(index), new PageNumber(index + 1, pages.size()));
    }

    @Override
    public int size() {
      return pages.size();
    }
  }

  /** How many drawings {@link #draw} gives. */
  static int sheets(Forest forest, Setting setting) {
    return ForestPages.of(forest, setting).size();
  }

  private static Picture picture(PageOfParts page, PageNumber number) {
    Board board = page.board();
    Style.Sheet sheet = board.style().sheet();
    Forest forest = board.forest();
    double height = sheet.fixedHeight().orElseGet(() -> page.height(number));
    String title = number.title(forest.heading().title());
    boolean links =
        forest.rows().stream().anyMatch(row -> row.href().isPresent())
            || forest.leftOut().stream().anyMatch(row -> row.href().isPresent());
    // A reader skips what stands inside an img, links too; a group with links stays open to it.
    String role = links ? "group" : "img";
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), role, title);
    svg.element("desc", forest.description());
    if (!sheet.withinPage()) {
      FigureMetadata.write(svg, forest);
    }
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    page.draw(svg, height, number);
    return new Picture(svg.end(), sheet.width(), height);
  }
}
