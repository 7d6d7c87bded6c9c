package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.budget.WorkStoppedException;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.selection.Question;
import gapwise.server.admission.BusyException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * What an answer stands on, in pieces of which each is remembered once it is worked out. A page
 * fetches as many a request as begin within a second, so that none meets the limit of a request; a
 * file takes as many as its request may compute, and who asks again goes on from there. No request
 * gets more time for it, since it would hold the seat of others.
 */
public final class Pieces {
  /** What was begun is at once there to go on with. */
  private static final int SECONDS = 1;

  private static final String KEPT =
      "This takes longer than one request may compute. What was worked out so far is kept: ask"
          + " again, and it goes on from there.";

  /** A page that gets its answer at once need not ask again for each piece. */
  private static final Duration SOON = Duration.ofSeconds(1);

  private final List<Piece> pieces = new ArrayList<>();
  private final InstantSource clock;

  /** No pieces. */
  public Pieces() {
    this(InstantSource.system());
  }

  Pieces(InstantSource clock) {
    this.clock = clock;
  }

  /**
   * @param there whether it is worked out
   * @param work works it out
   * @param some works out some of it, until it is asked to stop
   */
  private record Piece(BooleanSupplier there, Runnable work, Consumer<BooleanSupplier> some) {}

  /** The rows of a question and what is made of them. */
  public static Pieces ofAnswer(
      Answers answers, Question question, BooleanSupplier there, Runnable work) {
    return new Pieces()
        .and(
            () -> there.getAsBoolean() || answers.hasSelected(question),
            () -> answers.select(question))
        .and(there, work);
  }

  /** A table. */
  public static Pieces ofTable(RememberedOptions options, OptionQuestion question) {
    Pieces pieces = new Pieces();
    for (Aspect aspect : question.aspects()) {
      pieces.and(
          () -> options.hasReported(question, aspect), () -> options.report(question, aspect));
    }
    return pieces.and(() -> options.hasTable(question), () -> options.table(question));
  }

  /** A table with its options against each other. */
  public static Pieces ofCompared(RememberedOptions options, OptionQuestion question) {
    Pieces pieces = ofTable(options, question);
    for (Aspect aspect : question.aspects()) {
      pieces.and(
          new Piece(
              () -> options.hasCompared(question, aspect),
              () -> options.compared(question, aspect),
              enough -> options.compare(question, aspect, enough)));
    }
    return pieces;
  }

  /** A table with what networks of studies and adjusting say of each of its outcomes. */
  public static Pieces ofThrough(RememberedOptions options, OptionQuestion question) {
    Pieces pieces = ofTable(options, question);
    for (Aspect aspect : question.aspects()) {
      pieces.and(
          () -> options.hasThrough(question, aspect), () -> options.through(question, aspect));
    }
    return pieces;
  }

  /** The same and the posteriors of some outcomes of the table. */
  public Pieces withAverages(
      RememberedAverages averages, OptionQuestion question, Collection<Aspect> aspects) {
    for (Aspect aspect : aspects) {
      and(() -> averages.has(question, List.of(aspect)), () -> averages.workOut(question, aspect));
    }
    return this;
  }

  /**
   * The same and one piece more.
   *
   * @param there whether it is worked out
   * @param work works it out and has it remembered
   */
  public Pieces and(BooleanSupplier there, Runnable work) {
    return and(new Piece(there, work, enough -> work.run()));
  }

  private Pieces and(Piece piece) {
    pieces.add(piece);
    return this;
  }

  /** Whether all are worked out. */
  public boolean areThere() {
    return pieces.stream().allMatch(piece -> piece.there().getAsBoolean());
  }

  /**
   * Works out the first that is not there, and those after it that begin soon; of one that can be
   * stopped, as much as is told till then.
   */
  public void next() {
    Instant end = clock.instant().plus(SOON);
    BooleanSupplier enough = () -> !clock.instant().isBefore(end);
    boolean some = false;
    for (Piece piece : pieces) {
      if (some && enough.getAsBoolean()) {
        return;
      }
      if (!piece.there().getAsBoolean()) {
        piece.some().accept(enough);
        some = true;
      }
    }
  }

  /**
   * Works out all of them.
   *
   * @throws BusyException when the time of the request is over after some were worked out
   */
  public void all() {
    boolean some = false;
    for (Piece piece : pieces) {
      if (!piece.there().getAsBoolean()) {
        try {
          piece.work().run();
        } catch (RuntimeException failed) {
          if (some
              && WorkStoppedException.causing(failed)
                  .filter(one -> !one.isAbandoned())
                  .isPresent()) {
            throw new BusyException(SECONDS, KEPT);
          }
          throw failed;
        }
        some = true;
      }
    }
  }
}
