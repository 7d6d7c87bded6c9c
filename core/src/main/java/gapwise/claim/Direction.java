package gapwise.claim;

import gapwise.evidence.vocabulary.Outcome;
import java.util.Optional;
import java.util.stream.Stream;

/** Which way a claim says that the first method differs from the second. */
public enum Direction {
  MORE("more"),
  LESS("less");

  private final String code;

  Direction(String code) {
    this.code = code;
  }

  public String code() {
    return code;
  }

  /** The direction of a code; empty for another. */
  public static Optional<Direction> of(String code) {
    return Stream.of(values()).filter(one -> one.code.equals(code)).findFirst();
  }

  /** The word that fits an outcome: more or fewer, longer or shorter, higher or lower. */
  public String word(Outcome outcome) {
    return switch (outcome.kind()) {
      case EVENT, CATEGORIES, COUNT -> this == MORE ? "more" : "fewer";
      case TIME, PHASE -> this == MORE ? "longer" : "shorter";
      case QUANTITY, SCORE, COST -> this == MORE ? "higher" : "lower";
    };
  }
}
