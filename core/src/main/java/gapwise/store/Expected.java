package gapwise.store;

/**
 * What somebody who opens a home expects there.
 *
 * @param maybeNothing whether a home may be made where there is none
 * @param change a change that others saw in it, such as the index; 0 when they saw none. Used where
 *     the home's own note of it is gone.
 */
public record Expected(boolean maybeNothing, long change) {
  /** A home, or a place for a new one. */
  public static final Expected ANYTHING = new Expected(true, 0);

  /** A home that was made before; none is made. */
  public static final Expected A_HOME = new Expected(false, 0);

  public Expected {
    if (change < 0) {
      throw new IllegalArgumentException("change must be 0 or more, was " + change);
    }
  }

  /** The same, and others saw this change in it. */
  public Expected withChange(long seen) {
    return new Expected(maybeNothing, seen);
  }
}
