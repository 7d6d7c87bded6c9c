package gapwise.reference.kept;

import gapwise.reference.Reference;
import java.util.Objects;

/**
 * A record of a file that waits to be kept.
 *
 * @param reference what it says, whole
 * @param source where it stands
 */
public record SpooledRecord(Reference reference, RecordSource source) {
  public SpooledRecord {
    Objects.requireNonNull(reference, "reference");
    Objects.requireNonNull(source, "source");
  }
}
