package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Outcome;
import gapwise.paper.Refused;
import java.io.IOException;
import java.util.concurrent.CompletableFuture;

/**
 * Does one piece of reading in a thread with a deep stack, and turns whatever a file does to its
 * reader into an answer. Runs in the process that reads papers, which is ended from outside where
 * this does not end.
 */
final class Errand {
  /** Deep nesting of harmless files fits; a file nested without end runs out of it soon. */
  private static final long STACK_BYTES = 4L << 20;

  private Errand() {}

  /** What is to be done. */
  @FunctionalInterface
  interface Part<T> {
    T run() throws IOException;
  }

  static <T> Outcome<T> run(Part<T> part) {
    CompletableFuture<Outcome<T>> answer = new CompletableFuture<>();
    Thread thread =
        new Thread(
            null,
            () -> {
              try {
                answer.complete(attempt(part));
              } catch (Throwable failed) { // an error of the machine is no answer of the file
                answer.completeExceptionally(failed);
              }
            },
            "paper",
            STACK_BYTES);
    thread.setDaemon(true);
    thread.start();
    return answer.join();
  }

  /** PDFBox answers what is wrong with a file by exceptions of every kind, and by errors. */
  private static <T> Outcome<T> attempt(Part<T> part) {
    try {
      return new Outcome.Done<>(part.run());
    } catch (Guard.StoppedException stopped) {
      return new Outcome.Undone<>(stopped.refused());
    } catch (IOException | RuntimeException | StackOverflowError damaged) {
      return new Outcome.Undone<>(ofCause(damaged));
    }
  }

  /** PDFBox wraps some of what a guard throws. */
  private static Refused ofCause(Throwable damaged) {
    Throwable cause = damaged;
    for (int depth = 0; cause != null && depth < 10; depth++) {
      if (cause instanceof Guard.StoppedException stopped) {
        return stopped.refused();
      }
      cause = cause.getCause();
    }
    return Refused.damaged();
  }
}
