package gapwise.server.home;

import static gapwise.sentence.Sentences.say;

import gapwise.store.Soundness;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What everybody must know of the evidence base while it is shown.
 *
 * @param heading what is the matter, as a sentence of few words
 * @param words what follows from it, and what to do
 */
public record Notice(String heading, String words) {
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
        say(one ? "page.heading-damaged-record" : "page.heading-damaged-records"),
        say(one ? "page.damaged-record" : "page.damaged-records", Map.of("found", found.told())));
  }

  private static Notice ofFile(Soundness found) {
    return new Notice(
        say("page.heading-damaged-database"),
        say("page.damaged-database", Map.of("found", found.told())));
  }
}
