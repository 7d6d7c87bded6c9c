package gapwise.server.cli;

/** Exit codes of all commands. */
final class Exit {
  static final int DONE = 0;
  static final int BROKE_OFF = 1;
  static final int WRONG = 2;

  /** What was kept is no longer as it was. */
  static final int STALE = 3;

  private Exit() {}
}
