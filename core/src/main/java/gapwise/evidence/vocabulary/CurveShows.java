package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** Which share of the patients a published curve of times to an event shows. */
public enum CurveShows implements Coded {
  WITH_EVENT("with the event"),
  WITHOUT_EVENT("without the event");

  private final String label;

  CurveShows(String label) {
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

  /** The percentage without the event, where the curve stands at a percentage. */
  public double without(double share) {
    return this == WITH_EVENT ? 100 - share : share;
  }

  @JsonCreator
  static CurveShows ofCode(String code) {
    return Coded.parse(CurveShows.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
