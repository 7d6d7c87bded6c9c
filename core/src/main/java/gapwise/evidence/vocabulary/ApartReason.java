package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** Why a group is kept in the evidence base and never pooled. */
public enum ApartReason implements Coded {
  OUT_OF_SCOPE("outside the question of the review"),
  SELECTED_ON_OUTCOME("chosen by what became of them");

  private final String label;

  ApartReason(String label) {
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
  static ApartReason ofCode(String code) {
    return Coded.parse(ApartReason.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
