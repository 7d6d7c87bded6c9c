package gapwise.reference.pair;

import java.util.List;
import java.util.Objects;

/**
 * Two records proposed to a person.
 *
 * @param first one record
 * @param second the other one, which stands later
 * @param verdict what is proposed
 * @param reasons what speaks for it and against it, as sentences
 */
public record ProposedPair(
    RecordKey first, RecordKey second, Verdict verdict, List<String> reasons) {
  public ProposedPair {
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(verdict, "verdict");
    reasons = List.copyOf(reasons);
    if (reasons.isEmpty()) {
      throw new IllegalArgumentException("a proposal needs a reason");
    }
  }
}
