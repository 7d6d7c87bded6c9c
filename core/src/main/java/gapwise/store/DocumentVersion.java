package gapwise.store;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * One version of a document, as it was written and will stay.
 *
 * @param id the document
 * @param version 1 for the first, then counting on without a gap, deletions included
 * @param change place in the one change log over all documents: 1 for the first, no gaps
 * @param when when it was written, to the millisecond
 * @param who who wrote it
 * @param why the reason they gave
 * @param json the content; empty when this version deletes the document. Asking for it throws
 *     {@link RecordDamagedException} when the version is damaged.
 * @param damaged whether what stands in the file is not what was written
 */
public record DocumentVersion(
    DocumentId id,
    int version,
    long change,
    Instant when,
    String who,
    String why,
    Optional<String> json,
    boolean damaged) {
  public DocumentVersion {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(why, "why");
    Objects.requireNonNull(json, "json");
    if (version < 1 || change < 1) {
      throw new IllegalArgumentException(
          "version and change count from 1, were " + version + " and " + change);
    }
  }

  /** A version that is as it was written. */
  public DocumentVersion(
      DocumentId id,
      int version,
      long change,
      Instant when,
      String who,
      String why,
      Optional<String> json) {
    this(id, version, change, when, who, why, json, false);
  }

  @Override
  public Optional<String> json() {
    if (damaged) {
      throw new RecordDamagedException(id, version);
    }
    return json;
  }

  /** Whether this version says that the document is no more. */
  public boolean isDeletion() {
    return !damaged && json.isEmpty();
  }
}
