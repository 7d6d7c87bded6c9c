package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** Where the time of an outcome starts; times on different clocks are never pooled. */
public enum Clock implements Coded {
  INJURY("injury"),
  FIRST_STAGE("first stage"),
  DEFINITIVE_OPERATION("definitive operation"),
  GRAFTING("grafting or second stage"),
  FRAME_ON("frame put on"),
  DOCKING("docking"),
  FRAME_REMOVAL("frame taken off");

  private final String label;

  Clock(String label) {
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
  static Clock ofCode(String code) {
    return Coded.parse(Clock.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
