package gapwise.cohort;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.Collections;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a person settled of two records, or two groups of one.
 *
 * @param first study, or study/group, whose name comes first
 * @param second the other
 * @param settled what they are to each other
 * @param reason why, in the person's words
 * @param who the person
 * @param when the moment
 * @param counted of two that are the same, the one that is counted; empty to leave it to the usual
 *     rule
 * @param suppliers of two that overlap, which of them supplies an outcome, by the outcome's code;
 *     for others the usual rule chooses
 * @param stoodOn the hash of the proposal; once the records give another one it is asked again
 */
public record CohortDecision(
    String first,
    String second,
    Settled settled,
    String reason,
    String who,
    Instant when,
    Optional<String> counted,
    SortedMap<String, String> suppliers,
    String stoodOn) {

  /** What two records can be to each other, as a person settles it. */
  public enum Settled {
    /** One paper, or one group: one of the two is counted. */
    SAME,
    /** Patients are shared: counted once, by outcome. */
    OVERLAPPING,
    /** Nobody is shared. */
    SEPARATE,
    /** The papers cannot tell, and nobody could be asked. */
    NOT_KNOWN
  }

  public CohortDecision {
    Objects.requireNonNull(settled, "settled");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(stoodOn, "stoodOn");
    suppliers = Collections.unmodifiableSortedMap(new TreeMap<>(suppliers));
    if (Member.parse(first).compareTo(Member.parse(second)) >= 0) {
      throw new IllegalArgumentException(first + " must come before " + second);
    }
    if (who.isBlank() || reason.isBlank()) {
      throw new IllegalArgumentException("a decision needs a person and a reason");
    }
    requireOneOf(first, second, counted.stream());
    requireOneOf(first, second, suppliers.values().stream());
    if (settled != Settled.SAME && counted.isPresent()
        || settled != Settled.OVERLAPPING && !suppliers.isEmpty()) {
      throw new IllegalArgumentException(
          "of two that are the same one is counted, and of two that overlap each outcome has its"
              + " supplier");
    }
  }

  private static void requireOneOf(
      String first, String second, java.util.stream.Stream<String> named) {
    named
        .filter(name -> !name.equals(first) && !name.equals(second))
        .findAny()
        .ifPresent(
            name -> {
              throw new IllegalArgumentException(
                  "only " + first + " and " + second + " are decided about, not " + name);
            });
  }

  /** The key under which a decision about two is kept: the same in either order. */
  public static String key(Member one, Member two) {
    return one.compareTo(two) < 0 ? one + "+" + two : two + "+" + one;
  }

  /** The key of this decision. */
  @JsonIgnore
  public String key() {
    return key(Member.parse(first), Member.parse(second));
  }
}
