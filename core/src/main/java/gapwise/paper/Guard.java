package gapwise.paper;

import java.util.concurrent.TimeUnit;

/**
 * Watches one piece of reading: its time, its counts, and whether it was told to end. PDFBox knows
 * no limits of its own, so the guard sits where it cannot pass: at every byte taken from the file
 * and every step of drawing.
 */
public final class Guard {
  /** Looking at the clock costs more than most steps, so it is done once in so many. */
  private static final int STEPS_BETWEEN_LOOKS = 256;

  private final Caps caps;
  private final long end;
  private volatile boolean stopped;
  private int ticks;
  private int steps;

  /** Says out of the depth of PDFBox why reading ends; never seen outside this room. */
  public static final class StoppedException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient Refused refused;

    public StoppedException(Refused refused) {
      super(refused.sentence());
      this.refused = refused;
    }

    public Refused refused() {
      return refused;
    }
  }

  public Guard(Caps caps) {
    this.caps = caps;
    this.end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(caps.milliseconds());
  }

  public Caps caps() {
    return caps;
  }

  public void stop() {
    stopped = true;
  }

  /** One byte or block taken. */
  public void tick() {
    if (++ticks % STEPS_BETWEEN_LOOKS == 0) {
      look();
    }
  }

  /** One step of drawing. */
  public void step() {
    if (++steps > caps.steps()) {
      throw new StoppedException(Refused.tooMuch("more than " + caps.steps() + " steps"));
    }
    tick();
  }

  public void look() {
    if (stopped || Thread.currentThread().isInterrupted()) {
      throw new StoppedException(stoppedEarly());
    }
    if (System.nanoTime() - end > 0) {
      throw new StoppedException(tooSlow(caps));
    }
  }

  public static Refused stoppedEarly() {
    return new Refused(Refused.Reason.STOPPED, "Reading was stopped before it was done.");
  }

  public static Refused tooSlow(Caps caps) {
    return new Refused(
        Refused.Reason.TOO_SLOW,
        "Reading took longer than "
            + caps.milliseconds() / 1000.0
            + " seconds and was ended. Print the page to a new PDF file and try that one.");
  }
}
