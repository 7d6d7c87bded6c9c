package gapwise.extraction;

/** One of the two extractions of a paper. */
public enum Side {
  /** Of the person named first. */
  FIRST,
  /** Of the person named second. */
  SECOND;

  /** The other one. */
  public Side other() {
    return this == FIRST ? SECOND : FIRST;
  }
}
