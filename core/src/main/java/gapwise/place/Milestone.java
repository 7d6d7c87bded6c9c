package gapwise.place;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Optional;

/**
 * Something that a case reaches, with the one published outcome that means the same. Definitions
 * that papers keep apart stay apart here: full weight in a support is not full weight without one.
 */
public enum Milestone implements Coded {
  FRAME_OFF("external-fixation-time", "External frame taken off", "external frame taken off"),
  PARTIAL("time-to-partial-weight-bearing", "Partial weight bearing", "partial weight bearing"),
  IN_SUPPORT(
      "time-to-full-weight-bearing-in-support",
      "Full weight in a cast, boot or frame",
      "full weight in a cast, boot or frame"),
  FULL(
      "time-to-full-weight-bearing",
      "Full weight bearing, support not said",
      "full weight bearing, support not said"),
  UNSUPPORTED(
      "time-to-unsupported-weight-bearing",
      "Full weight without any support",
      "full weight without any support"),
  UNION("time-to-union", "Union", "union"),
  END("total-treatment-time", "End of all treatment", "end of all treatment"),
  COST("cost", "Cost of treatment", "cost of treatment");

  private final String outcomeCode;
  private final String label;
  private final String within;

  Milestone(String outcomeCode, String label, String within) {
    this.outcomeCode = outcomeCode;
    this.label = label;
    this.within = within;
  }

  @Override
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }

  /** The label as it stands within a sentence. */
  String within() {
    return within;
  }

  /** The published outcome it is held against. */
  public Outcome outcome() {
    return Outcome.of(outcomeCode);
  }

  /** The only clock on which it means anything: months in a frame count from the frame. */
  public Optional<Clock> onlyClock() {
    return this == FRAME_OFF ? Optional.of(Clock.FRAME_ON) : Optional.empty();
  }

  /** Whether it is a time; else it is money. */
  public boolean isTime() {
    return this != COST;
  }

  /** How a smaller value is called. */
  Comparative less() {
    return switch (this) {
      case FRAME_OFF, END -> Comparative.SHORTER;
      case COST -> Comparative.LOWER;
      default -> Comparative.EARLIER;
    };
  }

  /** How a larger value is called. */
  Comparative more() {
    return switch (this) {
      case FRAME_OFF, END -> Comparative.LONGER;
      case COST -> Comparative.HIGHER;
      default -> Comparative.LATER;
    };
  }
}
