package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** Whether a reported number counts, or is kept beside the one that does. */
public enum Standing implements Coded {
  COUNTS("counts"),
  ALTERNATIVE("another report of the same number"),
  SUPERSEDED("replaced by a later report");

  private final String label;

  Standing(String label) {
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
  static Standing ofCode(String code) {
    return Coded.parse(Standing.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
