package gapwise.search;

import gapwise.store.DocumentVersion;
import java.util.Map;
import java.util.Optional;

/**
 * How far the index has followed the change log; kept in the index itself.
 *
 * @param change number of the last change taken in, 0 for none
 * @param mark what tells that change from another of the same number in another log, such as one
 *     that went on after an older backup was put back
 */
record Reached(long change, String mark) {
  /**
   * Raised whenever documents of the index are made in another way; an index of another format is
   * built anew.
   */
  private static final String FORMAT = "3";

  static final Reached NOTHING = new Reached(0, "");

  static Reached at(DocumentVersion version) {
    return new Reached(
        version.change(), version.id() + " " + version.version() + " " + version.when());
  }

  Map<String, String> toCommit() {
    return Map.of("format", FORMAT, "change", Long.toString(change), "mark", mark);
  }

  /** Empty when the index is of another format or does not say. */
  static Optional<Reached> ofCommit(Map<String, String> commit) {
    String change = commit.getOrDefault("change", "");
    if (!FORMAT.equals(commit.get("format")) || !change.matches("\\d{1,18}")) {
      return Optional.empty();
    }
    return Optional.of(new Reached(Long.parseLong(change), commit.getOrDefault("mark", "")));
  }
}
