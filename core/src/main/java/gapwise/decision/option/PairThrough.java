package gapwise.decision.option;

import gapwise.claim.Through;
import gapwise.evidence.vocabulary.Method;
import java.util.Objects;

/**
 * Two methods set against each other by a network of studies, or as separate series with allowance
 * for what differs.
 *
 * @param column the outcome
 * @param first the method that stands first in the vocabulary
 * @param second the other
 * @param through what speaks of them; at least one of its parts
 */
public record PairThrough(Column column, Method first, Method second, Through through) {
  public PairThrough {
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(through, "through");
  }
}
