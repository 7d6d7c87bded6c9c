package gapwise.store;

import java.util.Objects;

/**
 * A version that is not in the file as it was written.
 *
 * @param change its place in the change log
 * @param name kind, key and version in words, as far as they can be read; not blank
 * @param what what is wrong with it
 */
public record DamagedRecord(long change, String name, What what) {
  public DamagedRecord {
    Objects.requireNonNull(what, "what");
    if (change < 1 || name.isBlank()) {
      throw new IllegalArgumentException(
          "change must be 1 or more and name not blank, were " + change + " and '" + name + "'");
    }
  }

  /** What can be wrong with one version. */
  public enum What {
    CHANGED("its content is not what was written"),
    UNREADABLE("it cannot be read"),
    MISSING("it is missing");

    private final String words;

    What(String words) {
      this.words = words;
    }
  }

  /** For people: which record, and what is wrong with it. */
  public String line() {
    return name + " (change " + change + "): " + what.words;
  }
}
