package gapwise.exchange.form;

/** The text of a cell does not stand for a value; the message says what was expected. */
public final class UnreadableException extends Exception {
  private static final long serialVersionUID = 1L;
  private final String code;

  /**
   * @param code kebab-case, as in {@link gapwise.problem.Problem}
   * @param message what was expected and what to do, without the place
   */
  UnreadableException(String code, String message) {
    super(message, null, false, false);
    this.code = code;
  }

  public String code() {
    return code;
  }
}
