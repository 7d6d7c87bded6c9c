package gapwise.decision.option;

import gapwise.evidence.vocabulary.Method;
import java.util.Objects;

/**
 * Two methods known from separate groups of patients: how probable it is that their averages differ
 * by what matters. That is no comparison, since the patients differ too.
 */
public record PairApart(Column column, Method first, Method second, Chances chances) {
  public PairApart {
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(chances, "chances");
  }
}
