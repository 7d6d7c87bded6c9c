package gapwise.store;

import java.util.Objects;

/**
 * What writes were decided upon: all documents of one kind as they stood after one change. Where
 * any of them has changed since, in whatever process, the decision must be made anew.
 *
 * @param kind kind of the documents
 * @param change number of the change, 0 for before the first
 */
public record Basis(String kind, long change) {
  public Basis {
    Objects.requireNonNull(kind, "kind");
    if (change < 0) {
      throw new IllegalArgumentException("change must be 0 or more, was " + change);
    }
  }
}
