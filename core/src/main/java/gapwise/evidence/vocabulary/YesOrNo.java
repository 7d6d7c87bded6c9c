package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A yes-or-no question about patients or a paper, as far as the paper answers it. */
public enum YesOrNo implements Coded {
  YES("yes"),
  NO("no"),
  MIXED("some yes, some no"),
  UNCLEAR("unclear");

  private final String label;

  YesOrNo(String label) {
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
  static YesOrNo ofCode(String code) {
    return Coded.parse(YesOrNo.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
