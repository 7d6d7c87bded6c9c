package gapwise.search;

import java.util.Objects;
import java.util.Set;

/**
 * What an index follows in a store.
 *
 * @param studies kind of the documents that hold studies
 * @param silent kinds of documents of which nothing that is shown tells; a change of these alone
 *     makes no new state, so that what was worked out of the last one stays
 */
public record IndexedKinds(String studies, Set<String> silent) {
  public IndexedKinds {
    Objects.requireNonNull(studies, "studies");
    silent = Set.copyOf(silent);
    if (silent.contains(studies)) {
      throw new IllegalArgumentException("studies are not silent: " + studies);
    }
  }

  /** Every change makes a new state. */
  public static IndexedKinds of(String studies) {
    return new IndexedKinds(studies, Set.of());
  }
}
