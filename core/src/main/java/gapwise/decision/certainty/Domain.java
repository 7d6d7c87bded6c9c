package gapwise.decision.certainty;

import gapwise.evidence.vocabulary.Coded;

/** What may lower certainty. */
public enum Domain implements Coded {
  BIAS("risk of bias", "B"),
  INCONSISTENCY("results that differ", "R"),
  INDIRECTNESS("other patients than asked", "P"),
  IMPRECISION("too few patients", "F"),
  UNPUBLISHED("results not published", "U");

  private final String label;
  private final String letter;

  Domain(String label, String letter) {
    this.label = label;
    this.letter = letter;
  }

  @Override
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }

  /** One letter for tables, explained beside them. */
  public String letter() {
    return letter;
  }
}
