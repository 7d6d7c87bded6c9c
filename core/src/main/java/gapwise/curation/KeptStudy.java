package gapwise.curation;

import gapwise.evidence.Study;
import java.util.Objects;

/**
 * A study as it stands in the evidence base.
 *
 * @param study the record
 * @param stamp which version it is, and who wrote it when and why
 */
public record KeptStudy(Study study, VersionStamp stamp) {
  public KeptStudy {
    Objects.requireNonNull(study, "study");
    Objects.requireNonNull(stamp, "stamp");
  }

  public int version() {
    return stamp.version();
  }
}
