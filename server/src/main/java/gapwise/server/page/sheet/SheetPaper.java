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
    A4("@page { size: A4; margin: 6mm 9mm; }"),
    /**
     * 18 mm less high than A4, so that lines stand closer, or letters are smaller, where methods
     * fill the page.
     */
    LETTER(
        "@page { size: letter; margin: 5mm 9mm; } .sheet.patient.n6 { line-height: 1.06; }"
            + " .sheet.patient.n5 { font-size: 8.3pt; } .sheet.patient.n4 { font-size: 8.9pt; }"
            + " .sheet.patient.n3 { font-size: 9.3pt; }"
            + " .sheet.team { line-height: 1.04; }");

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
    return new SheetPaper(document, style + size.css);
  }
}
