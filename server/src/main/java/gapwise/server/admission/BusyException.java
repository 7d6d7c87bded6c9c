package gapwise.server.admission;

/** What is asked cannot be taken just now; it can be asked again later. */
public final class BusyException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final int seconds;
  private final String words;

  /**
   * @param seconds after which it is worth asking again
   * @param words why, and what to do, as sentences for the person
   */
  public BusyException(int seconds, String words) {
    super(words);
    this.seconds = seconds;
    this.words = words;
  }

  /** Why, and what to do. */
  public String words() {
    return words;
  }

  /** After how many seconds it is worth asking again. */
  public int seconds() {
    return seconds;
  }
}
