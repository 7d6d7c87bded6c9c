package gapwise.store;

import gapwise.problem.Problem;

/** The store cannot do its work, and a person has to act: the problem says what and how. */
public sealed class StoreUnusableException extends RuntimeException permits RecordDamagedException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  StoreUnusableException(Problem problem, Throwable cause) {
    super(problem.line(), cause);
    this.problem = problem;
  }

  StoreUnusableException(Problem problem) {
    super(problem.line());
    this.problem = problem;
  }

  /**
   * Codes: store-in-use, store-damaged, record-damaged, store-missing, store-emptied, store-behind,
   * store-other, store-foreign, store-newer, no-home, no-backup, file-unusable, disk-full,
   * home-unusable, store-failed; with a database of a server also store-elsewhere, store-unknown,
   * store-busy, database-away, database-refused, no-database, database-read-only,
   * database-encoding, database-not-empty, text-unwritable.
   */
  public Problem problem() {
    return problem;
  }
}
