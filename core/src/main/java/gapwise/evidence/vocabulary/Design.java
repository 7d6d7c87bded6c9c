package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** How a study was made, read from its methods rather than its title. */
public enum Design implements Coded {
  RANDOMISED("randomised trial"),
  QUASI_RANDOMISED("quasi-randomised trial"),
  PROSPECTIVE_COMPARATIVE("prospective comparison"),
  RETROSPECTIVE_COMPARATIVE("retrospective comparison"),
  CASE_CONTROL("case-control study"),
  PROSPECTIVE_SERIES("prospective series"),
  RETROSPECTIVE_SERIES("retrospective series"),
  SERIES("series, direction not stated"),
  RETROSPECTIVE("retrospective, comparison or series not said"),
  CASE_REPORT("case report");

  private final String label;

  Design(String label) {
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
  static Design ofCode(String code) {
    return Coded.parse(Design.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
