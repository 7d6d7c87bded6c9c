package gapwise.server.home;

import gapwise.budget.Memory;
import java.util.function.Function;
import java.util.function.ToIntFunction;

/**
 * Keeps the latest answers of one state of the evidence base, those of each kind up to so many rows
 * together: the rows of one question may be all groups that there are.
 */
final class RowMemory implements Memory {
  /** Answers of one kind; where they hold few rows, a result takes some hundred kilobytes. */
  static final int MOST = 100;

  /**
   * Rows of one kind of answers: all groups of a large base once. A row takes some two kilobytes
   * with its study and half of one more in a result; a selection and what is made of it share the
   * study. There are six kinds, so that all of them together stay below half a gigabyte.
   */
  static final int MOST_ROWS = 30_000;

  @Override
  public <K, T> Kept<K, T> keep(Function<K, T> work, ToIntFunction<T> rows) {
    return new Remembered<>(MOST, MOST_ROWS, rows, work);
  }
}
