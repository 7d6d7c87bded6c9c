package gapwise.decision.situation;

import gapwise.evidence.vocabulary.Coded;

/** What may matter most to a patient. */
public enum Wish implements Coded {
  KEEPING_THE_LIMB("keeping the limb"),
  WALKING_SOON("walking soon"),
  FEWER_OPERATIONS("fewer operations"),
  LEAST_INFECTION("least risk of infection"),
  SHORT_FRAME("a short time in a frame"),
  BACK_TO_WORK("going back to work"),
  LOW_COST("low cost");

  private final String label;

  Wish(String label) {
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
