package gapwise.cohort;

import java.util.List;
import java.util.Objects;

/**
 * That a person should look at two records, or two groups of one, with the reasons.
 *
 * @param first the one whose name comes first
 * @param second the other
 * @param verdict what they may be to each other
 * @param strength how much it stands on
 * @param signs what agrees, what speaks against it and what is not given, in this order
 * @param stoodOn a hash of all that was compared of both; another once one of them changes in it
 */
public record Proposal(
    Member first,
    Member second,
    Verdict verdict,
    Strength strength,
    List<Sign> signs,
    String stoodOn) {
  public Proposal {
    Objects.requireNonNull(verdict, "verdict");
    Objects.requireNonNull(strength, "strength");
    signs =
        signs.stream().sorted((one, other) -> one.bearing().compareTo(other.bearing())).toList();
    Objects.requireNonNull(stoodOn, "stoodOn");
    if (first.compareTo(second) >= 0) {
      throw new IllegalArgumentException(first + " must come before " + second);
    }
    if (signs.isEmpty()) {
      throw new IllegalArgumentException("a proposal needs a reason");
    }
  }

  /** The same whichever of the two it is asked of: the key of a decision about the pair. */
  public String key() {
    return CohortDecision.key(first, second);
  }

  /** The same, told as what papers cannot tell. */
  Proposal asPossible() {
    return new Proposal(first, second, Verdict.POSSIBLE, strength, signs, stoodOn);
  }

  /** The signs that have this bearing. */
  public List<Sign> signs(Bearing bearing) {
    return signs.stream().filter(sign -> sign.bearing() == bearing).toList();
  }
}
