package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A yes-or-no question about patients or a paper, as far as the paper answers it. */
public enum Answer implements Coded {
  YES("yes"),
  NO("no"),
  MIXED("some yes, some no"),
  UNCLEAR("unclear");

  private final String label;

  Answer(String label) {
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
  static Answer ofCode(String code) {
    return Coded.parse(Answer.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
