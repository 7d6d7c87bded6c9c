package gapwise.decision.situation;

import gapwise.evidence.vocabulary.Coded;

/** Which groups of patients the numbers are taken from. */
public enum Taken implements Coded {
  /** That reach into the missing length asked for, whatever the bone and the infection. */
  LENGTH("series that reach into this length"),
  /** That also are of this bone, and infected or not as asked. */
  ALIKE("only series of this length, bone and infection"),
  /** Whatever their missing length. */
  ANY("series of any length");

  private final String label;

  Taken(String label) {
    this.label = label;
  }

  @Override
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }
}
