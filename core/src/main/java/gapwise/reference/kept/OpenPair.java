package gapwise.reference.kept;

import gapwise.reference.pair.Verdict;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Two that a person is asked about.
 *
 * @param first the member whose name comes first
 * @param second the other
 * @param verdict what is proposed
 * @param reasons what speaks for it and against it, as sentences
 * @param stoodOn hash of what both say now
 * @param before what was settled of them when one of them said something else
 */
public record OpenPair(
    String first,
    String second,
    Verdict verdict,
    List<String> reasons,
    String stoodOn,
    Optional<ReferenceDecision> before) {
  public OpenPair {
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(verdict, "verdict");
    reasons = List.copyOf(reasons);
    Objects.requireNonNull(stoodOn, "stoodOn");
    Objects.requireNonNull(before, "before");
  }

  /** One name for the two. */
  public String key() {
    return Member.key(first, second);
  }
}
