package gapwise.figure;

import java.util.ArrayList;
import java.util.List;

/** Draws forest plots: the same value gives the same bytes on every machine. */
public final class ForestDrawing {
  private ForestDrawing() {}

  /**
   * Draws the figure. {@link Medium#PAGE} and {@link Medium#PHONE} give one drawing; {@link
   * Medium#A4} and {@link Medium#SLIDE} as many pages as it takes, each with its headings, axis,
   * cautions and provenance.
   */
  public static List<Picture> draw(Forest forest, Medium medium) {
    Board board = Board.of(forest, medium);
    List<PageOfParts> pages = new Paginator(board).pages();
    List<Picture> pictures = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      pictures.add(picture(board, pages.get(i), i + 1, pages.size()));
    }
    return List.copyOf(pictures);
  }

  /** How many drawings {@link #draw} gives. */
  static int sheets(Forest forest, Medium medium) {
    return new Paginator(Board.of(forest, medium)).pages().size();
  }

  private static Picture picture(Board board, PageOfParts page, int number, int of) {
    Style.Sheet sheet = board.style().sheet();
    Forest forest = board.forest();
    double height = sheet.fixedHeight().orElse(page.height());
    String title = forest.heading().title() + (of > 1 ? ", page " + number + " of " + of : "");
    boolean links =
        forest.rows().stream().anyMatch(row -> row.href().isPresent())
            || forest.leftOut().stream().anyMatch(row -> row.href().isPresent());
    // A reader skips what stands inside an img, links too; a group with links stays open to it.
    String role = links ? "group" : "img";
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), role, title);
    svg.element("desc", forest.description());
    FigureMetadata.write(svg, forest);
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    page.draw(svg, board, height, of > 1 ? "Page " + number + " of " + of : "");
    return new Picture(svg.end(), sheet.width(), height);
  }
}
