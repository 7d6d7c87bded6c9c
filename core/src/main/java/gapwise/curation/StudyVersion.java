package gapwise.curation;

import gapwise.evidence.Study;
import java.util.Objects;
import java.util.Optional;

/**
 * One version in the history of a study.
 *
 * @param stamp which version it is
 * @param study the record; empty when this version removed it
 */
public record StudyVersion(VersionStamp stamp, Optional<Study> study) {
  public StudyVersion {
    Objects.requireNonNull(stamp, "stamp");
    Objects.requireNonNull(study, "study");
  }
}
