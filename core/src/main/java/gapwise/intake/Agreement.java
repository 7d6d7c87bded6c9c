package gapwise.intake;

import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What a person has agreed to of one import.
 *
 * @param doubts whether the doubt of this key stands in the papers
 * @param changes whether this change may take the place of what stands in the base
 * @param left ids of studies that are left as they stand, as if they were not in the file
 */
public record Agreement(
    Predicate<String> doubts, Predicate<StudyChange> changes, Set<String> left) {
  /** Nobody has agreed to anything. */
  public static final Agreement NONE = new Agreement(key -> false, change -> false, Set.of());

  /** To every doubt and every change: for data that are known, and for tests. */
  public static final Agreement ALL = new Agreement(key -> true, change -> true, Set.of());

  public Agreement {
    Objects.requireNonNull(doubts, "doubts");
    Objects.requireNonNull(changes, "changes");
    left = Set.copyOf(left);
  }
}
