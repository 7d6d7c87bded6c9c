package gapwise.decision.certainty;

/** Where the certainty of evidence starts. */
public enum Start {
  /** A rate after one method, from series or any arm alone: prognosis (Iorio et al., BMJ 2015). */
  ONE_METHOD(Level.HIGH),
  /** Methods compared in non-randomised studies (Guyatt et al., BMJ 2025;389:e083864). */
  COMPARED(Level.LOW),
  /**
   * The same where studies were rated with the seven-domain instrument, which counts confounding
   * itself (Schunemann et al., J Clin Epidemiol 2019;111:105).
   */
  COMPARED_BY_DOMAINS(Level.HIGH),
  /** Methods compared by lot. */
  RANDOMISED(Level.HIGH);

  private final Level level;

  Start(Level level) {
    this.level = level;
  }

  /** The level before anything lowers or raises it. */
  public Level level() {
    return level;
  }
}
