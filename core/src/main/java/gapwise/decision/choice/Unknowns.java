package gapwise.decision.choice;

import gapwise.evidence.vocabulary.Coded;

/** What becomes of an outcome that is not known after a method. */
public enum Unknowns implements Coded {
  RANGE("anything within its range, every value as likely"),
  LEAVE_OUT("the method is left out, by name");

  private final String label;

  Unknowns(String label) {
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
