package gapwise.table;

import gapwise.problem.Problems;
import java.util.function.LongConsumer;

/** One reading under way: who takes the rows, what was found wrong, how far it got. */
final class FileReading {
  /**
   * After so many problems a reading stops, so that a file that is wrong in every row neither fills
   * the memory nor buries the reader. Our choice: more than anyone mends in one go.
   */
  static final int MOST_PROBLEMS = 1000;

  /** Progress is told each time so many rows have been read, and at the end of each sheet. */
  static final int ROWS_BETWEEN_PROGRESS = 500;

  private final Problems problems;
  private final SheetConsumer consumer;
  private final LongConsumer progress;
  private int problemCount;
  private long rows;

  FileReading(Problems problems, SheetConsumer consumer, LongConsumer progress) {
    this.problems = problems;
    this.consumer = consumer;
    this.progress = progress;
  }

  void problem(String where, String code, String message) {
    if (problemCount == MOST_PROBLEMS) {
      problems.add(
          where,
          "too-many-problems",
          "Reading stopped here after "
              + MOST_PROBLEMS
              + " problems. Mend those listed and read the file again.");
      throw new Stopped();
    }
    problemCount++;
    problems.add(where, code, message);
  }

  boolean wants(String sheet) {
    try {
      return consumer.wants(sheet);
    } catch (RuntimeException failure) {
      throw new ConsumerFailed(failure);
    }
  }

  void begin(Header header) {
    guarded(() -> consumer.begin(header));
  }

  void row(Row row) {
    rows++;
    guarded(() -> consumer.row(row));
    if (rows % ROWS_BETWEEN_PROGRESS == 0) {
      tellProgress();
    }
  }

  void end(Header header) {
    guarded(() -> consumer.end(header));
    tellProgress();
  }

  long rows() {
    return rows;
  }

  private void tellProgress() {
    guarded(() -> progress.accept(rows));
  }

  /** Keeps a failure of the caller's own code apart from a failure of the file. */
  private static void guarded(Runnable call) {
    try {
      call.run();
    } catch (RuntimeException failure) {
      throw new ConsumerFailed(failure);
    }
  }

  /** The reading is over because too much is wrong; the problems say so. */
  static final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Stopped() {
      super("reading stopped", null, false, false);
    }
  }

  /** Carries what a consumer threw through the parsers. */
  static final class ConsumerFailed extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final RuntimeException failure;

    ConsumerFailed(RuntimeException failure) {
      super(failure.getMessage(), failure, false, false);
      this.failure = failure;
    }

    RuntimeException failure() {
      return failure;
    }
  }
}
