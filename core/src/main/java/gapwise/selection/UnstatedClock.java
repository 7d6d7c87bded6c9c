package gapwise.selection;

import gapwise.evidence.vocabulary.Coded;

/** What becomes of values that do not say from when they count, where others do. */
public enum UnstatedClock implements Coded {
  KEEP("taken with the others"),
  LEAVE_OUT("left out");

  private final String label;

  UnstatedClock(String label) {
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
