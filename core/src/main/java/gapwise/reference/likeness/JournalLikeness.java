package gapwise.reference.likeness;

import java.util.List;

/** What two names of journals have in common. */
public enum JournalLikeness {
  /** The same name, or one as the abbreviation of the other. */
  SAME,
  /** One of the two is not told. */
  UNKNOWN,
  /** Two journals, as far as the names tell. */
  DIFFERENT;

  /** Compares names as printed, in full or abbreviated; blank where none is told. */
  public static JournalLikeness of(String one, String two) {
    return of(JournalName.of(one), JournalName.of(two));
  }

  /** Compares names made ready before. */
  public static JournalLikeness of(JournalName one, JournalName two) {
    List<String> first = one.words();
    List<String> second = two.words();
    if (first.isEmpty() || second.isEmpty()) {
      return UNKNOWN;
    }
    if (first.equals(second) || isAcronym(one, second) || isAcronym(two, first)) {
      return SAME;
    }
    boolean begin = first.get(0).charAt(0) == second.get(0).charAt(0);
    return begin && (abbreviates(first, second) || abbreviates(second, first)) ? SAME : DIFFERENT;
  }

  /** Each word of the short name begins, or shortens, the word at its place in the long one. */
  private static boolean abbreviates(List<String> brief, List<String> full) {
    if (brief.size() > full.size() || (brief.size() < 2 && full.size() > 1)) {
      return brief.size() == 1 && full.size() > 1 && startsAlone(brief.get(0), full);
    }
    int at = 0;
    for (String word : brief) {
      if (at >= full.size() || !shortens(word, full.get(at))) {
        return false;
      }
      at++;
    }
    // What is left of the full name is an addition such as a place, as in "Ossa (Nowhere)".
    return full.size() - at <= Math.max(1, full.size() / 3);
  }

  private static boolean startsAlone(String word, List<String> full) {
    return full.size() == 2 && full.get(0).equals(word);
  }

  private static boolean shortens(String brief, String full) {
    if (full.startsWith(brief)) {
      return true;
    }
    if (brief.charAt(0) != full.charAt(0)
        || brief.length() < 2
        || brief.length() >= full.length()) {
      return EditDistance.isSlip(brief, full);
    }
    // "Jnl" for "journal": the letters stand in the word in their order.
    int at = 0;
    for (int i = 0; i < full.length() && at < brief.length(); i++) {
      at += full.charAt(i) == brief.charAt(at) ? 1 : 0;
    }
    return at == brief.length();
  }

  /** "JMFS" for a journal of four words. */
  private static boolean isAcronym(JournalName brief, List<String> full) {
    if (brief.letters().length() != full.size() || full.size() < 3) {
      return false;
    }
    StringBuilder initials = new StringBuilder();
    full.forEach(word -> initials.append(word.charAt(0)));
    return brief.letters().contentEquals(initials);
  }
}
