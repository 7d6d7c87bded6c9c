package gapwise.server.home;

/** A hold on one state of the evidence base, for one piece of work; let go of by closing it. */
public final class Hold implements AutoCloseable {
  private final Evidence evidence;

  Hold(Evidence evidence) {
    this.evidence = evidence;
  }

  /** The state. */
  public Evidence evidence() {
    return evidence;
  }

  @Override
  public void close() {
    evidence.snapshot().release();
  }
}
