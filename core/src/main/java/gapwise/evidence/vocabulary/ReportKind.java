package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What kind of publication a record was read from. */
public enum ReportKind implements Coded {
  ARTICLE("article"),
  ABSTRACT("conference abstract"),
  THESIS("thesis"),
  PREPRINT("preprint"),
  LETTER("letter"),
  CORRECTION("correction"),
  RETRACTION("retracted");

  private final String label;

  ReportKind(String label) {
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
  static ReportKind ofCode(String code) {
    return Coded.parse(ReportKind.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
