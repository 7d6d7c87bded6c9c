package gapwise.desk;

import java.util.Objects;

/**
 * A doubt that a person looked up in the paper and lets stand. It is asked again only when what it
 * is about changes, for its key is made of that.
 *
 * @param key which doubt
 * @param by initials of the person
 * @param reason why it stands
 */
public record SettledDoubt(String key, String by, String reason) {
  /** Letters of the reason. */
  public static final int LONGEST_REASON = 500;

  /** Letters of initials or a name. */
  public static final int LONGEST_NAME = 80;

  public SettledDoubt {
    Objects.requireNonNull(key, "key");
    require("initials", by, LONGEST_NAME);
    require("reason", reason, LONGEST_REASON);
  }

  private static void require(String what, String text, int longest) {
    if (text.isBlank() || text.length() > longest) {
      throw new IllegalArgumentException(
          what + " must have 1 to " + longest + " letters, had " + text.length());
    }
  }

  /** As the record of the import keeps it. */
  public String line() {
    return by + ": " + reason;
  }
}
