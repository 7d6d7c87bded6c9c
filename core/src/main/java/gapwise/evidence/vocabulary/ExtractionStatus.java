package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** How far the extraction of a study has come. */
public enum ExtractionStatus implements Coded {
  DRAFT("draft"),
  EXTRACTED("extracted once"),
  VERIFIED("checked by a second person"),
  AGREED("agreed by two who read it apart");

  private final String label;

  ExtractionStatus(String label) {
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
  static ExtractionStatus ofCode(String code) {
    return Coded.parse(ExtractionStatus.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
