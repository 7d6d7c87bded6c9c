package gapwise.budget;

import gapwise.problem.Problem;
import java.util.Optional;

/**
 * Work was ended before its end: its time was over, or nobody waited for it any more. Thrown by
 * {@link Work#check}, caught once at each door.
 */
public final class WorkStoppedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final boolean abandoned;
  private final String words;

  private WorkStoppedException(boolean abandoned, String words) {
    super(words);
    this.abandoned = abandoned;
    this.words = words;
  }

  static WorkStoppedException abandoned() {
    return new WorkStoppedException(true, "Nobody waits for this answer any more.");
  }

  /** Its time was over. */
  public static WorkStoppedException outOfTime(long seconds) {
    return new WorkStoppedException(
        false,
        "This takes longer than one request may compute (limit: "
            + seconds
            + " s). Ask for less (fewer rows, draws or variants), or run the plan on the command"
            + " line with --limit seconds=600.");
  }

  /** That which a failure comes from: work spread over threads brings its end wrapped in theirs. */
  public static Optional<WorkStoppedException> causing(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof WorkStoppedException stopped) {
        return Optional.of(stopped);
      }
    }
    return Optional.empty();
  }

  /** Whether nobody waits for the answer, so that none need be given. */
  public boolean isAbandoned() {
    return abandoned;
  }

  /** The reason for the person. */
  public Problem problem() {
    return new Problem("", abandoned ? "nobody-waits" : "takes-too-long", words);
  }
}
