package gapwise.paper;

import gapwise.budget.WorkStoppedException;
import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Does one piece of reading in a thread of its own, so that whoever asked has an answer in time
 * whatever a file does to the reader. Two run at once; a thread that will not end keeps its place,
 * so at worst files are no longer read, and nothing else is hurt.
 */
final class Errand {
  /** As many as the smallest machine that we serve has cores. */
  private static final int AT_ONCE = 2;

  private static final Semaphore PLACES = new Semaphore(AT_ONCE);

  /** Deep nesting of harmless files fits; a file nested without end runs out of it soon. */
  private static final long STACK_BYTES = 4L << 20;

  /** How long a thread that was told to end has before its work is given up. */
  private static final long GRACE_MILLISECONDS = 2_000;

  private Errand() {}

  /** What is to be done. */
  @FunctionalInterface
  interface Part<T> {
    T run() throws IOException;
  }

  /** An answer, or why there is none. */
  sealed interface Outcome<T> permits Done, Undone {}

  record Done<T>(T value) implements Outcome<T> {}

  record Undone<T>(Refused refused) implements Outcome<T> {}

  static <T> Outcome<T> run(Guard guard, Part<T> part) {
    boolean placed = false;
    try {
      placed = PLACES.tryAcquire(guard.millisecondsLeft(), TimeUnit.MILLISECONDS);
      if (!placed) {
        return new Undone<>(busy());
      }
      CompletableFuture<Outcome<T>> answer = new CompletableFuture<>();
      Runnable errand =
          () -> {
            try {
              answer.complete(guard.work().join(() -> attempt(part)));
            } catch (WorkStoppedException stopped) {
              answer.completeExceptionally(stopped);
            } finally {
              PLACES.release();
            }
          };
      Thread thread = new Thread(null, errand, "paper", STACK_BYTES);
      thread.setDaemon(true);
      thread.start();
      placed = false;
      return await(guard, answer, thread);
    } catch (InterruptedException interrupted) {
      guard.stop();
      Thread.currentThread().interrupt();
      return new Undone<>(
          new Refused(Refused.Reason.STOPPED, "Reading was stopped before it was done."));
    } finally {
      if (placed) {
        PLACES.release();
      }
    }
  }

  private static <T> Outcome<T> await(
      Guard guard, CompletableFuture<Outcome<T>> answer, Thread thread)
      throws InterruptedException {
    try {
      return answer.get(guard.millisecondsLeft() + GRACE_MILLISECONDS, TimeUnit.MILLISECONDS);
    } catch (TimeoutException late) {
      guard.stop();
      thread.interrupt();
      return new Undone<>(guard.tooSlow());
    } catch (ExecutionException failed) {
      if (failed.getCause() instanceof WorkStoppedException stopped) {
        throw stopped;
      }
      return new Undone<>(Refused.damaged());
    }
  }

  /** PDFBox answers what is wrong with a file by exceptions of every kind, and by errors. */
  private static <T> Outcome<T> attempt(Part<T> part) {
    try {
      return new Done<>(part.run());
    } catch (Guard.StoppedException stopped) {
      return new Undone<>(stopped.refused());
    } catch (WorkStoppedException stopped) {
      throw stopped;
    } catch (OutOfMemoryError full) {
      return new Undone<>(Refused.tooMuch("more than there is memory for"));
    } catch (IOException | RuntimeException | StackOverflowError damaged) {
      return new Undone<>(ofCause(damaged));
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

  private static Refused busy() {
    return new Refused(
        Refused.Reason.BUSY,
        "Other files are being read and take all the room there is. Try again in a minute.");
  }
}
