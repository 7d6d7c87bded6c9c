package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** When the missing length was measured. */
public enum DefectStage implements Coded {
  BEFORE_DEBRIDEMENT("before debridement"),
  AFTER_DEBRIDEMENT("after debridement");

  private final String label;

  DefectStage(String label) {
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
  static DefectStage ofCode(String code) {
    return Coded.parse(DefectStage.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
