package gapwise.review;

/** The stages of a review through which its papers and studies go. */
public enum ReviewStage {
  TITLE("Title and abstract"),
  FULL_TEXT("Full text"),
  SETTLED("Settled"),
  EXTRACTION("Extraction"),
  CHECKED("Checked");

  private final String label;

  ReviewStage(String label) {
    this.label = label;
  }

  /** The words that people read. */
  public String label() {
    return label;
  }
}
