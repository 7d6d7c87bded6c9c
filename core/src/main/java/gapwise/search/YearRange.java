package gapwise.search;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * Years of publication, ends included.
 *
 * @param from first year; empty when any may be the first
 * @param to last year; empty when any may be the last
 */
public record YearRange(OptionalInt from, OptionalInt to) {
  /** Any year, and none. */
  public static final YearRange ANY = new YearRange(OptionalInt.empty(), OptionalInt.empty());

  public YearRange {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
  }

  /** One year alone. */
  public static YearRange only(int year) {
    return new YearRange(OptionalInt.of(year), OptionalInt.of(year));
  }

  /** Whether it keeps any study out. */
  public boolean narrows() {
    return from.isPresent() || to.isPresent();
  }

  /** Whether it ends before it starts. */
  public boolean isBackwards() {
    return from.isPresent() && to.isPresent() && from.getAsInt() > to.getAsInt();
  }
}
