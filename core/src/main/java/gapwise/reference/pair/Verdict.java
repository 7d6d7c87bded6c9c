package gapwise.reference.pair;

/** What is proposed of two records, the surest first. */
public enum Verdict {
  /** Copies of one paper. */
  SAME("same"),
  /** Two publications that belong together, such as an abstract and its paper. */
  RELATED("related"),
  /** A person must look. */
  POSSIBLE("possible");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** The word for files. */
  public String word() {
    return word;
  }
}
