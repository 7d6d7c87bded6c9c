package gapwise.server.page.sheet;

import gapwise.server.report.SheetDocument;

/**
 * The sheet on paper.
 *
 * @param document what it shows
 * @param style its style, written inside
 */
public record SheetPaper(SheetDocument document, String style) {
  /** Papers that a sheet is printed on. */
  enum Size {
    A4("A4"),
    LETTER("letter");

    private final String css;

    Size(String css) {
      this.css = css;
    }
  }

  /**
   * A sheet on a paper.
   *
   * @param style the style for all papers
   */
  static SheetPaper on(Size size, SheetDocument document, String style) {
    return new SheetPaper(document, style + "@page { size: " + size.css + "; margin: 6mm 9mm; }");
  }
}
