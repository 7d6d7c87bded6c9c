package gapwise.evidence;

/** The rule that every identifier in a record keeps. */
public final class Ids {
  /** Characters of an identifier at most. */
  public static final int LONGEST = 120;

  private Ids() {}

  /** Whether a text may be an identifier: not blank, in one line and not too long. */
  public static boolean isId(String text) {
    return !text.isBlank()
        && text.length() <= LONGEST
        && text.chars().noneMatch(Character::isISOControl);
  }

  /**
   * Refuses an identifier that is blank, longer than 120 characters, or holds a control character.
   */
  static void require(String what, String id) {
    if (!isId(id)) {
      throw new IllegalArgumentException(
          what + " must be 1 to 120 printable characters, was '" + excerpt(id) + "'");
    }
  }

  private static String excerpt(String id) {
    return id.length() <= LONGEST ? id : id.substring(0, 40) + "..." + " of " + id.length();
  }
}
