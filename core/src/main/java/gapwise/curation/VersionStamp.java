package gapwise.curation;

import gapwise.store.DocumentVersion;
import java.time.Instant;
import java.util.Objects;

/**
 * Which version of a record something is.
 *
 * @param version 1 for the first
 * @param change number in the change log of the whole store
 * @param when when it was written
 * @param who who wrote it
 * @param why the reason they gave
 */
public record VersionStamp(int version, long change, Instant when, String who, String why) {
  public VersionStamp {
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(why, "why");
  }

  static VersionStamp of(DocumentVersion document) {
    return new VersionStamp(
        document.version(), document.change(), document.when(), document.who(), document.why());
  }
}
