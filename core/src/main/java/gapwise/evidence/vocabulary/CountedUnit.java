package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What a number counts; events of limbs are never divided by a number of patients. */
public enum CountedUnit implements Coded {
  PATIENTS("patients"),
  LIMBS("limbs"),
  DEFECTS("defects");

  private final String label;

  CountedUnit(String label) {
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
  static CountedUnit ofCode(String code) {
    return Coded.parse(CountedUnit.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
