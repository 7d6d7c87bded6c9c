package gapwise.budget;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * One piece of work under way, with its budget. It is bound to the thread that does it, so that the
 * innermost loop can ask whether to go on without being handed anything; work that is spread over
 * several threads takes its own along by {@link #join}.
 *
 * <p>A loop whose turns a person can drive up calls {@link #check} once a turn; a count that a
 * person gives is held against its limit by {@link #require} before anything is made from it. Work
 * that nobody has bound has no limits. Safe for use by many threads.
 */
public final class Work {
  private static final ThreadLocal<Work> CURRENT = new ThreadLocal<>();
  private static final Work FREE = new Work(Budget.UNLIMITED);

  private final Budget budget;
  private final long start = System.nanoTime();
  private final long mostNanos;
  private volatile boolean abandoned;

  private Work(Budget budget) {
    this.budget = Objects.requireNonNull(budget, "budget");
    long seconds = budget.most(Limit.SECONDS);
    this.mostNanos = seconds == Long.MAX_VALUE ? Long.MAX_VALUE : TimeUnit.SECONDS.toNanos(seconds);
  }

  /** Work that starts now. */
  public static Work within(Budget budget) {
    return new Work(budget);
  }

  /** What the calling thread is at; work without limits where nothing is bound. */
  public static Work current() {
    Work bound = CURRENT.get();
    return bound == null ? FREE : bound;
  }

  /**
   * Does a part of this work in the calling thread.
   *
   * @throws WorkStoppedException from a {@link #check} within, when the time is over or nobody
   *     waits any more
   */
  public <T> T join(Supplier<T> part) {
    Work before = CURRENT.get();
    CURRENT.set(this);
    try {
      return part.get();
    } finally {
      if (before == null) {
        CURRENT.remove();
      } else {
        CURRENT.set(before);
      }
    }
  }

  /** The budget. */
  public Budget budget() {
    return budget;
  }

  /** Says that nobody waits for the answer any more; the next check ends the work. */
  public void abandon() {
    abandoned = true;
  }

  /**
   * Whether the calling thread may go on; costs some nanoseconds.
   *
   * @throws WorkStoppedException when the time is over or nobody waits any more
   */
  public static void check() {
    Work work = CURRENT.get();
    if (work != null) {
      work.mayGoOn();
    }
  }

  private void mayGoOn() {
    if (abandoned) {
      throw WorkStoppedException.abandoned();
    }
    if (System.nanoTime() - start > mostNanos) {
      throw WorkStoppedException.outOfTime(budget.most(Limit.SECONDS));
    }
  }

  /**
   * Holds a count against its limit.
   *
   * @param where the place of what is counted, as in {@link Problem}
   * @param found how many there are
   * @param advice what the person can do instead, as a sentence
   * @throws WrongInputException when there are more than the budget allows
   */
  public static void require(Limit limit, long found, String where, String advice) {
    long most = current().budget.most(limit);
    if (found > most) {
      throw new WrongInputException(List.of(tooMany(limit, found, most, where, advice)));
    }
  }

  private static Problem tooMany(Limit limit, long found, long most, String where, String advice) {
    return new Problem(
        where,
        "over-the-limit",
        String.format(
            Locale.ROOT,
            "Found %,d %s; at most %,d are taken. %s",
            found,
            limit.words(),
            most,
            advice));
  }
}
