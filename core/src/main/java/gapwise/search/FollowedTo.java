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
record FollowedTo(long change, String mark) {
  /**
   * Raised whenever documents of the index are made in another way; an index of another format is
   * built anew.
   */
  private static final String FORMAT = "8";

  static final FollowedTo NOTHING = new FollowedTo(0, "");

  static FollowedTo at(DocumentVersion version) {
    return new FollowedTo(
        version.change(), version.id() + " " + version.version() + " " + version.when());
  }

  Map<String, String> toCommit() {
    return Map.of("format", FORMAT, "change", Long.toString(change), "mark", mark);
  }

  /** Empty when the index is of another format or does not say. */
  static Optional<FollowedTo> ofCommit(Map<String, String> commit) {
    String change = commit.getOrDefault("change", "");
    if (!FORMAT.equals(commit.get("format")) || !change.matches("\\d{1,18}")) {
      return Optional.empty();
    }
    return Optional.of(new FollowedTo(Long.parseLong(change), commit.getOrDefault("mark", "")));
  }
}
