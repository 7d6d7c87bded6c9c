package gapwise.server.admission;

import gapwise.budget.Budget;
import java.time.Duration;
import java.util.Objects;

/**
 * How much is taken at once. The numbers of {@link #standard} are ours: they let one machine with
 * two cores and a heap of one gigabyte answer plain pages whatever else is asked of it.
 *
 * @param connections most connections that are open
 * @param header longest time from the first byte of a request to the end of its header
 * @param body how fast what is sent must come
 * @param answer how fast an answer must be taken
 * @param answerBytes most bytes of an answer that wait for a reader without a thread
 * @param spoolBytes most bytes of bodies that lie on the disk while they come in
 * @param computing most requests of one kind that compute at once
 * @param waiting how long a request waits for others of its kind
 * @param budget what one request may cost
 */
public record Bounds(
    int connections,
    Duration header,
    Pace body,
    Pace answer,
    int answerBytes,
    long spoolBytes,
    int computing,
    Duration waiting,
    Budget budget) {
  /** Many times what a department opens; below it a thousand sockets are no burden. */
  private static final int CONNECTIONS = 1_000;

  private static final Duration HEADER = Duration.ofSeconds(10);

  /** A twentieth of a slow telephone line; a workbook of 5 MB needs 4 KB a second anyway. */
  private static final long LEAST_BYTES_PER_SECOND = 4_096;

  private static final Pace BODY =
      new Pace(Duration.ofSeconds(10), LEAST_BYTES_PER_SECOND, Duration.ofMinutes(20));
  private static final Pace ANSWER =
      new Pace(Duration.ofSeconds(20), LEAST_BYTES_PER_SECOND, Duration.ofHours(2));

  /** Nearly all pages; a thousand of them are a quarter of the heap. */
  private static final int ANSWER_BYTES = 256 * 1024;

  /** Eight uploads of the largest size. */
  private static final long SPOOL_BYTES = 1L << 30;

  /** A person waits as long for a page before she asks again. */
  private static final Duration WAITING = Duration.ofSeconds(5);

  public Bounds {
    Objects.requireNonNull(header, "header");
    Objects.requireNonNull(body, "body");
    Objects.requireNonNull(answer, "answer");
    Objects.requireNonNull(waiting, "waiting");
    Objects.requireNonNull(budget, "budget");
    if (connections < 1 || computing < 1 || spoolBytes < 0) {
      throw new IllegalArgumentException(
          "nobody could be answered: " + connections + ", " + computing + ", " + spoolBytes);
    }
  }

  /** What a server gets: as much computing at once as this machine has processors. */
  public static Bounds standard() {
    return new Bounds(
        CONNECTIONS,
        HEADER,
        BODY,
        ANSWER,
        ANSWER_BYTES,
        SPOOL_BYTES,
        Runtime.getRuntime().availableProcessors(),
        WAITING,
        Budget.STANDARD);
  }
}
