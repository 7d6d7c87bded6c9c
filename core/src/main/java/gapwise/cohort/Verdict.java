package gapwise.cohort;

/** What two records, or two groups of one record, may be to each other. The worst comes first. */
public enum Verdict {
  /** One paper under another spelling or another id. */
  SAME_PAPER("same paper"),
  /** Some patients, or all, stand in both papers. */
  OVERLAPPING("overlapping"),
  /** One group is a part of the other, which stands beside it. */
  PART("part"),
  /** Some facts fit and none speaks against it, but the papers cannot tell. */
  POSSIBLE("possible");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** The word for files and lists, such as "same paper". */
  public String word() {
    return word;
  }
}
