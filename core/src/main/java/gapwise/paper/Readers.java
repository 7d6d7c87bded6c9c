package gapwise.paper;

import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * The processes that read papers for this one: at most two, started when they are first needed and
 * kept for the next paper. One that gives no answer in time is ended and another takes its place,
 * so that no file, whatever it does to its reader, keeps others from being read. Safe for use by
 * many threads.
 */
final class Readers {
  /**
   * By its name alone, so that whoever asks about papers never has the reader of PDF files in its
   * own process.
   */
  static final String MAIN = "gapwise.paper.file.ReaderMain";

  /** Those of this program. */
  static final Readers OURS = new Readers(MAIN);

  /** As many as the smallest machine that we serve has cores. */
  private static final int AT_ONCE = 2;

  /** How long a process that ought to have ended its work by itself has before it is ended. */
  private static final long GRACE_MILLISECONDS = 2_000;

  /** How long a Java machine may take to start on a busy computer. */
  private static final long START_MILLISECONDS = 20_000;

  /** How soon a person who no longer waits is noticed. */
  private static final long LOOK_MILLISECONDS = 50;

  private final String main;
  private final Semaphore places = new Semaphore(AT_ONCE, true);
  private final List<Reader> idle = new ArrayList<>();

  /**
   * @param main the class whose main method answers in each process
   */
  Readers(String main) {
    this.main = main;
  }

  /**
   * Asks about a paper.
   *
   * @return what was said, or why nothing was
   * @throws WorkStoppedException where the person at the door no longer waits
   */
  Outcome<Reader.Said> ask(Ask ask) {
    try {
      if (!isPlaced(ask.caps().milliseconds() + GRACE_MILLISECONDS + START_MILLISECONDS)) {
        return new Outcome.Undone<>(busy());
      }
      Optional<Reader> reader = reader(ask.paper());
      if (reader.isEmpty()) {
        places.release();
        return new Outcome.Undone<>(unstarted());
      }
      return await(reader.get(), ask);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      return new Outcome.Undone<>(Guard.stoppedEarly());
    }
  }

  private boolean isPlaced(long patience) throws InterruptedException {
    long end = in(patience);
    boolean placed = false;
    while (!placed && System.nanoTime() - end < 0) {
      Work.check();
      placed = places.tryAcquire(LOOK_MILLISECONDS, TimeUnit.MILLISECONDS);
    }
    return placed;
  }

  /** One that has the file open, else any, else a new one; empty where none can be started. */
  private Optional<Reader> reader(long paper) {
    synchronized (idle) {
      idle.removeIf(one -> !one.isAlive());
      Optional<Reader> found =
          idle.stream()
              .filter(one -> one.holds(paper))
              .findFirst()
              .or(() -> idle.stream().findFirst());
      if (found.isPresent()) {
        idle.remove(found.get());
        return found;
      }
    }
    try {
      return Optional.of(Reader.start(main));
    } catch (IOException unstarted) {
      return Optional.empty();
    }
  }

  private void release(Reader reader) {
    synchronized (idle) {
      if (reader.isAlive()) {
        idle.add(reader);
      }
    }
    places.release();
  }

  private Outcome<Reader.Said> await(Reader reader, Ask ask) throws InterruptedException {
    CompletableFuture<Reader.Answer> answer = reader.ask(ask);
    answer.whenComplete((said, failure) -> release(reader));
    boolean started = false;
    long end = in(START_MILLISECONDS);
    while (System.nanoTime() - end < 0) {
      try {
        if (!started && reader.greeting().isDone()) {
          started = true;
          end = in(ask.caps().milliseconds() + GRACE_MILLISECONDS);
        }
        Work.check();
        return outcome(answer.get(LOOK_MILLISECONDS, TimeUnit.MILLISECONDS));
      } catch (TimeoutException notYet) {
        continue;
      } catch (ExecutionException impossible) {
        throw new IllegalStateException("an answer is never a failure", impossible);
      } catch (WorkStoppedException | InterruptedException gone) {
        endSoon(reader, answer);
        throw gone;
      }
    }
    reader.kill();
    return new Outcome.Undone<>(started ? Guard.tooSlow(ask.caps()) : unstarted());
  }

  private static long in(long milliseconds) {
    return System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(milliseconds);
  }

  /** Ends the work of a process for whom nobody waits, and the process where it does not obey. */
  private static void endSoon(Reader reader, CompletableFuture<Reader.Answer> answer) {
    reader.stop();
    CompletableFuture.delayedExecutor(GRACE_MILLISECONDS, TimeUnit.MILLISECONDS)
        .execute(
            () -> {
              if (!answer.isDone()) {
                reader.kill();
              }
            });
  }

  private static Outcome<Reader.Said> outcome(Reader.Answer answer) {
    if (answer instanceof Reader.Said said) {
      return said.reply().refused().isPresent()
          ? new Outcome.Undone<>(said.reply().refused().get())
          : new Outcome.Done<>(said);
    }
    return new Outcome.Undone<>(
        ((Reader.Ended) answer).forMemory()
            ? Refused.tooMuch("more than there is memory for")
            : Refused.damaged());
  }

  /**
   * Lets a file go wherever it is open and nothing is being read; a process that is at work lets
   * its oldest files go when it opens others.
   */
  void close(long paper) {
    List<Reader> holding = new ArrayList<>();
    synchronized (idle) {
      for (Reader one : List.copyOf(idle)) {
        if (one.isAlive() && one.holds(paper) && places.tryAcquire()) {
          idle.remove(one);
          holding.add(one);
        }
      }
    }
    for (Reader reader : holding) {
      CompletableFuture<Reader.Answer> answer = reader.ask(Ask.of(Ask.What.CLOSE, paper));
      answer.whenComplete((said, failure) -> release(reader));
      try {
        answer.get(GRACE_MILLISECONDS, TimeUnit.MILLISECONDS);
      } catch (TimeoutException | ExecutionException late) {
        reader.kill();
      } catch (InterruptedException interrupted) {
        endSoon(reader, answer);
        Thread.currentThread().interrupt();
      }
    }
  }

  /** Ends those that are at nothing now. */
  void endAll() {
    synchronized (idle) {
      idle.forEach(Reader::kill);
    }
  }

  private static Refused busy() {
    return new Refused(
        Refused.Reason.BUSY,
        "Other files are being read and take all the room there is. Try again in a minute.");
  }

  private static Refused unstarted() {
    return new Refused(
        Refused.Reason.BUSY,
        "The computer has no room now for the program that reads papers. Try again in a minute.");
  }
}
