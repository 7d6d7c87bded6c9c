package gapwise.server.account;

/** Thrown where it must be known who asks and is not. */
public final class SignInNeededException extends RuntimeException {
  private static final long serialVersionUID = 1;

  SignInNeededException(String words) {
    super(words);
  }

  /** What to do, in a sentence. */
  public String words() {
    return String.valueOf(getMessage());
  }
}
