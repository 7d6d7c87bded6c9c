package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** Why a field is empty; an empty cell without a reason has not been extracted yet. */
public enum Missing implements Coded {
  NOT_REPORTED("not reported"),
  NOT_APPLICABLE("not applicable"),
  UNCLEAR("unclear");

  private final String label;

  Missing(String label) {
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
  static Missing ofCode(String code) {
    return Coded.parse(Missing.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
