package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What the numbers of a record were read from. */
public enum ReadAs implements Coded {
  FULL_PAPER("the whole paper"),
  ABSTRACT("its abstract alone"),
  SECOND_HAND("another paper that tells of it");

  private final String label;

  ReadAs(String label) {
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
  static ReadAs ofCode(String code) {
    return Coded.parse(ReadAs.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
