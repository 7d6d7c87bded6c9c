package gapwise.claim;

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
}
