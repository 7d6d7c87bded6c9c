package gapwise.reference.kept;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.Objects;

/**
 * What a person settled of two kept references, or of one and a study.
 *
 * @param first the member whose name comes first, as {@link Member} writes it
 * @param second the other
 * @param settled what they are to each other
 * @param reason why, in the person's words
 * @param who the person
 * @param when the moment
 * @param stoodOn hash of what both records said; once one says something else it is asked again
 */
public record ReferenceDecision(
    String first,
    String second,
    Settled settled,
    String reason,
    String who,
    Instant when,
    String stoodOn) {

  /** What two records can be to each other. */
  public enum Settled {
    /** Records of one paper. */
    SAME,
    /** Two publications that belong together, such as a paper and a notice about it. */
    RELATED,
    /** Neither. */
    DIFFERENT
  }

  public ReferenceDecision {
    Objects.requireNonNull(settled, "settled");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(stoodOn, "stoodOn");
    if (first.compareTo(second) >= 0) {
      throw new IllegalArgumentException(first + " must come before " + second);
    }
    if (!Member.isMember(first) || !Member.isMember(second)) {
      throw new IllegalArgumentException("no members: " + first + ", " + second);
    }
    if (who.isBlank() || reason.isBlank()) {
      throw new IllegalArgumentException("a decision needs a person and a reason");
    }
  }

  /** The key under which it is kept: the same in either order. */
  @JsonIgnore
  public String key() {
    return Member.key(first, second);
  }
}
