package gapwise.reference.format;

/** Formats of references that are read. */
public enum Format {
  RIS("RIS"),
  MEDLINE("MEDLINE text"),
  BIBTEX("BibTeX"),
  CSL_JSON("CSL-JSON");

  private final String label;

  Format(String label) {
    this.label = label;
  }

  /** Its name for people. */
  public String label() {
    return label;
  }
}
