package gapwise.curation;

import static gapwise.sentence.Sentences.say;

/** The store failed in such a way that nobody can tell now whether an import stands. */
public final class ImportInDoubtException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private static final String WORDS = say("import.in-doubt");

  ImportInDoubtException(RuntimeException cause) {
    super(WORDS, cause);
  }

  /** What is not known, and what to do. */
  public String words() {
    return WORDS;
  }
}
