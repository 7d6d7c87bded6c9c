package gapwise.evidence.vocabulary;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The known word that a mistyped one most likely meant, by the distance of Levenshtein (1966). */
public final class Nearest {
  private Nearest() {}

  /** Empty when nothing is near: more than a third of the letters would have to change. */
  public static Optional<String> to(String typed, Collection<String> known) {
    String sought = folded(typed);
    int farthest = Math.max(1, sought.length() / 3);
    record Candidate(String word, int distance) {}
    return known.stream()
        .filter(word -> Math.abs(folded(word).length() - sought.length()) <= farthest)
        .map(word -> new Candidate(word, distance(sought, folded(word))))
        .filter(candidate -> candidate.distance() <= farthest)
        .min(Comparator.comparingInt(Candidate::distance))
        .map(Candidate::word);
  }

  /** A list up to this long is told whole. */
  private static final int SHORT_LIST = 20;

  /**
   * What was expected in place of a word that is not known: the nearest one; else the whole list
   * where it is short, else where to find it.
   *
   * @param known codes
   */
  public static String expected(String typed, Collection<String> known) {
    return to(typed, known)
        .map(near -> "the nearest there is: '" + near + "'")
        .orElseGet(
            () ->
                known.size() <= SHORT_LIST
                    ? "expected one of " + String.join(", ", known)
                    : "nothing here is like it; /api/v1/vocabularies lists all "
                        + known.size()
                        + " words");
  }

  private static String folded(String text) {
    return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
  }

  /** How many letters must be put in, taken out or changed to make one word of another. */
  public static int distance(String a, String b) {
    int[] before = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      before[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] now = new int[b.length() + 1];
      now[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = before[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        now[j] = Math.min(change, 1 + Math.min(before[j], now[j - 1]));
      }
      before = now;
    }
    return before[b.length()];
  }
}
