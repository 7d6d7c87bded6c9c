package gapwise.store;

import gapwise.problem.Problem;

/** What stands in the file for one version is not what was written, so it is not given out. */
public final class RecordDamagedException extends StoreUnusableException {
  private static final long serialVersionUID = 1L;

  RecordDamagedException(DocumentId id, int version) {
    super(
        new Problem(
            id + ", version " + version,
            "record-damaged",
            "This record is damaged: its content is not what was once written. Put the last sound"
                + " backup back, or import the record again as its next version."));
  }
}
