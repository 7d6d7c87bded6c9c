package gapwise.decision.situation;

import gapwise.evidence.vocabulary.Coded;

/** The skin and muscle over the missing bone. */
public enum SoftTissue implements Coded {
  CLOSED("closed, or already covered"),
  NEEDS_COVER("needs a flap");

  private final String label;

  SoftTissue(String label) {
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
