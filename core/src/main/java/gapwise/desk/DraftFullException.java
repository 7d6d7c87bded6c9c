package gapwise.desk;

/** A draft would have more rows than one has; a larger study comes in as a filled template. */
public final class DraftFullException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  DraftFullException(int rows) {
    super("a draft has at most " + Draft.MOST_ROWS + " rows, had " + rows);
  }
}
