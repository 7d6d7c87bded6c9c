package gapwise.curation;

/** The store failed in such a way that nobody can tell now whether an import stands. */
public final class ImportInDoubtException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private static final String WORDS =
      "The store broke off and cannot be read, so it cannot be told whether this import was"
          + " stored; all of it was, or nothing. Look at the newest imports on the first page"
          + " once the store can be read again, and import again if it is not there: what"
          + " stands already is not stored twice.";

  ImportInDoubtException(RuntimeException cause) {
    super(WORDS, cause);
  }

  /** What is not known, and what to do. */
  public String words() {
    return WORDS;
  }
}
