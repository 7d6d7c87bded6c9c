package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A part of the whole treatment time, in the order in which patients live through it. */
public enum Phase implements Coded {
  TEMPORARY_FRAME("temporary frame before the operation"),
  BETWEEN_STAGES("between stages"),
  LATENCY("latency before distraction"),
  DISTRACTION("distraction or transport"),
  CONSOLIDATION("consolidation"),
  IN_FRAME("in the frame"),
  NO_WEIGHT_BEARING("no weight on the leg"),
  PARTIAL_WEIGHT_BEARING("partial weight"),
  FULL_IN_SUPPORT("full weight in a cast, boot or frame"),
  UNSUPPORTED("unsupported");

  private final String label;

  Phase(String label) {
    this.label = label;
  }

  @Override
  @JsonValue
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }

  @JsonCreator
  static Phase ofCode(String code) {
    return Coded.parse(Phase.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
