package gapwise.figure.file;

/** The kinds of file that every figure can be taken away as. */
public enum FileKind {
  /** Drawing, sharp at every size. */
  SVG(".svg", "image/svg+xml", "Drawing (SVG)"),
  /** Picture of a chosen size. */
  PNG(".png", "image/png", "Picture (PNG)"),
  /** The numbers that are drawn. */
  CSV(".csv", "text/csv; charset=utf-8", "Numbers (CSV)"),
  /** Citations of the studies shown, one a line. */
  CITATIONS("-citations.txt", "text/plain; charset=utf-8", "Citations (text)"),
  /** The same for reference programs, in tags. */
  RIS("-citations.ris", "application/x-research-info-systems", "Citations (RIS)"),
  /** The same in the data schema of the Citation Style Language. */
  CSL("-citations.json", "application/vnd.citationstyles.csl+json", "Citations (CSL-JSON)");

  private final String ending;
  private final String mediaType;
  private final String label;

  FileKind(String ending, String mediaType, String label) {
    this.ending = ending;
    this.mediaType = mediaType;
    this.label = label;
  }

  /** End of the file's name. */
  public String ending() {
    return ending;
  }

  public String mediaType() {
    return mediaType;
  }

  /** What it is called. */
  public String label() {
    return label;
  }
}
