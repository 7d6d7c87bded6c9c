package gapwise.evidence;

/** The rule that every identifier in a record keeps. */
final class Ids {
  private Ids() {}

  /**
   * Refuses an identifier that is blank, longer than 120 characters, or holds a control character.
   */
  static void require(String what, String id) {
    if (id.isBlank() || id.length() > 120 || id.chars().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException(
          what + " must be 1 to 120 printable characters, was '" + excerpt(id) + "'");
    }
  }

  private static String excerpt(String id) {
    return id.length() <= 120 ? id : id.substring(0, 40) + "..." + " of " + id.length();
  }
}
