package gapwise.decision.situation;

import gapwise.evidence.vocabulary.Coded;

/** How a group of patients matches what is asked, the better first. */
public enum Match implements Coded {
  /** Its patients are as asked. */
  INSIDE("inside"),
  /** Some of its patients are as asked. */
  EDGE("at the edge"),
  /** The paper does not say. */
  UNKNOWN("unknown"),
  /** None of its patients is as asked. */
  OUTSIDE("outside");

  private final String label;

  Match(String label) {
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

  /** The worse of two. */
  Match orWorse(Match other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
