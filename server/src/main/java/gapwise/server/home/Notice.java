package gapwise.server.home;

import gapwise.store.Soundness;
import java.util.Objects;
import java.util.Optional;

/**
 * What everybody must know of the evidence base while it is shown.
 *
 * @param heading what is the matter, as a sentence of few words
 * @param words what follows from it, and what to do
 */
public record Notice(String heading, String words) {
  private static final String FOUND = "At the last start this was found: ";

  public Notice {
    Objects.requireNonNull(heading, "heading");
    Objects.requireNonNull(words, "words");
  }

  /** That damage was found in the database, and what to do; empty where all is sound. */
  static Optional<Notice> ofDamage(Soundness found) {
    if (found.isSound()) {
      return Optional.empty();
    }
    return Optional.of(found.structure().isEmpty() ? ofRecords(found) : ofFile(found));
  }

  private static Notice ofRecords(Soundness found) {
    boolean one = found.records().size() == 1;
    return new Notice(
        one ? "A record is damaged." : "Records are damaged.",
        FOUND
            + found.told()
            + (one ? " What needs it is refused" : " What needs one of them is refused")
            + "; all other records are sound. Put the last sound backup back; a study can also be"
            + " imported again (docs/guide/backup.md says how). All records are looked at again at"
            + " the next start.");
  }

  private static Notice ofFile(Soundness found) {
    return new Notice(
        "The database is damaged.",
        FOUND
            + found.told()
            + " Import nothing now. Stop the server, copy its folder as it is, check the disk, and"
            + " put the last sound backup back: docs/guide/backup.md says how.");
  }
}
