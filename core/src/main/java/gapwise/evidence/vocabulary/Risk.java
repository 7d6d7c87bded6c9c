package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/**
 * How far the way in which a study was made may have moved its result, as people judged it with a
 * published instrument; in the order of worseness, but for the last.
 */
public enum Risk implements Coded {
  /** Low in every domain asked. */
  LOW("low risk of bias", "L"),
  /** Moderate, or some concerns. */
  SOME("some risk of bias", "M"),
  /** Serious, or high in the words of the instrument for trials. */
  SERIOUS("serious risk of bias", "S"),
  /** Too flawed to say anything useful. */
  CRITICAL("critical risk of bias", "C"),
  /** Nobody has judged it, or too little to know: never the same as low. */
  NOT_RATED("risk of bias not rated", "NR");

  private final String label;
  private final String letter;

  Risk(String label, String letter) {
    this.label = label;
    this.letter = letter;
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

  /** One or two letters that stand for it in a mark. */
  public String letter() {
    return letter;
  }

  /** Whether people have judged it. */
  public boolean isRated() {
    return this != NOT_RATED;
  }

  /** Whether it is serious or critical. */
  public boolean isHigh() {
    return this == SERIOUS || this == CRITICAL;
  }

  /** The worse of two; whatever is rated stands before what is not. */
  public Risk orWorse(Risk other) {
    if (!isRated() || !other.isRated()) {
      return isRated() ? this : other;
    }
    return compareTo(other) >= 0 ? this : other;
  }

  @JsonCreator
  static Risk ofCode(String code) {
    return Coded.parse(Risk.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
