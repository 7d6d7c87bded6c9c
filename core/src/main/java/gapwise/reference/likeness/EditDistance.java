package gapwise.reference.likeness;

/**
 * How many slips lie between two words: a letter left out, put in, taken for another, or two
 * neighbours exchanged, each once (optimal string alignment; Damerau 1964,
 * doi:10.1145/363958.363994 names the four slips).
 */
public final class EditDistance {
  private EditDistance() {}

  /**
   * The number of slips.
   *
   * @param most beyond this the count is of no interest, and {@code most + 1} is returned
   */
  public static int between(String one, String two, int most) {
    if (Math.abs(one.length() - two.length()) > most) {
      return most + 1;
    }
    if (most == 0) {
      return one.equals(two) ? 0 : 1;
    }
    long first = letters(one);
    long second = letters(two);
    if (Long.bitCount(first & ~second) > most || Long.bitCount(second & ~first) > most) {
      return most + 1;
    }
    int[] before = new int[two.length() + 1];
    int[] last = new int[two.length() + 1];
    int[] row = new int[two.length() + 1];
    for (int at = 0; at < last.length; at++) {
      last[at] = at;
    }
    for (int i = 1; i <= one.length(); i++) {
      row[0] = i;
      int least = i;
      for (int j = 1; j <= two.length(); j++) {
        int other = one.charAt(i - 1) == two.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(Math.min(row[j - 1] + 1, last[j] + 1), last[j - 1] + other);
        if (i > 1
            && j > 1
            && one.charAt(i - 1) == two.charAt(j - 2)
            && one.charAt(i - 2) == two.charAt(j - 1)) {
          row[j] = Math.min(row[j], before[j - 2] + 1);
        }
        least = Math.min(least, row[j]);
      }
      if (least > most) {
        return most + 1;
      }
      int[] spare = before;
      before = last;
      last = row;
      row = spare;
    }
    return Math.min(last[two.length()], most + 1);
  }

  /**
   * A bit for each letter that stands in a word, some letters sharing one. A slip brings or takes
   * at most one of them, so words that differ in more need no closer look.
   */
  private static long letters(String word) {
    long letters = 0;
    for (int at = 0; at < word.length(); at++) {
      letters |= 1L << (word.charAt(at) & 63);
    }
    return letters;
  }

  /**
   * Whether two words may be one with slips: one in four letters or more, two in eight or more, in
   * three letters only two neighbours exchanged. Common practice, no source.
   */
  public static boolean isSlip(String one, String two) {
    int length = Math.min(one.length(), two.length());
    if (length == 3 && two.length() == one.length()) {
      String swappedFront = "" + one.charAt(1) + one.charAt(0) + one.charAt(2);
      String swappedBack = "" + one.charAt(0) + one.charAt(2) + one.charAt(1);
      return one.equals(two) || two.equals(swappedFront) || two.equals(swappedBack);
    }
    int allowed = length < 4 ? 0 : length < 8 ? 1 : 2;
    return between(one, two, allowed) <= allowed;
  }
}
