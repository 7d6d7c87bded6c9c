package gapwise.reference.pair;

import gapwise.reference.Reference;
import java.util.Objects;

/**
 * A reference with the place that it was read from.
 *
 * @param key which record it is
 * @param reference what it says
 */
public record FiledReference(RecordKey key, Reference reference) {
  public FiledReference {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(reference, "reference");
  }
}
