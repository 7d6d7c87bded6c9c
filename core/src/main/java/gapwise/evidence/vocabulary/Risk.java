package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.EnumSet;
import java.util.Set;

/**
 * How far the way in which a study was made may have moved its result, as people judged it with a
 * published instrument; in the order of worseness, but for the last.
 */
public enum Risk implements Coded {
  /** Low in every domain asked. */
  LOW("low", "L"),
  /** Moderate, or some concerns. */
  SOME("some", "M"),
  /** Serious, or high in the words of the instrument for trials. */
  SERIOUS("serious", "S"),
  /** Too flawed to say anything useful. */
  CRITICAL("critical", "C"),
  /** Nobody has judged it, or too little to know: never the same as low. */
  NOT_RATED("not rated", "NR");

  private final String shortLabel;
  private final String letter;

  Risk(String shortLabel, String letter) {
    this.shortLabel = shortLabel;
    this.letter = letter;
  }

  @Override
  @JsonValue
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return this == NOT_RATED ? "risk of bias not rated" : shortLabel + " risk of bias";
  }

  /** Where it is said what is rated: "serious". */
  public String shortLabel() {
    return shortLabel;
  }

  /** One or two letters that stand for it in a mark. */
  public String letter() {
    return letter;
  }

  /**
   * All but serious and critical: what is not rated stays, and must be counted wherever it does.
   */
  public static Set<Risk> neitherSeriousNorCritical() {
    return EnumSet.of(LOW, SOME, NOT_RATED);
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
