package gapwise.server.account;

/** Thrown where a server that others reach has no accounts, so that it must not answer. */
public final class NoAccountsException extends RuntimeException {
  private static final long serialVersionUID = 1;

  /** Says what to do on the machine of the server. */
  public NoAccountsException() {
    super(
        "There are no accounts, so this server answers nobody beyond its own machine. Make the"
            + " first account there: gapwise people add NAME --role administrator.");
  }
}
