package gapwise.store;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * Why one write could not be done: someone else was there first.
 *
 * @param id the document
 * @param expectedVersion the version that the writer meant to follow; empty when none was named:
 *     the write was to delete what is not there, or it was decided upon an older state of the
 *     document
 * @param foundVersion the last version, 0 when there is none
 * @param foundDeleted whether that version is a deletion
 */
public record Conflict(
    DocumentId id, OptionalInt expectedVersion, int foundVersion, boolean foundDeleted) {
  public Conflict {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(expectedVersion, "expectedVersion");
    if (foundVersion < 0) {
      throw new IllegalArgumentException("foundVersion must be 0 or more, was " + foundVersion);
    }
  }
}
