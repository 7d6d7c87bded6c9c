package gapwise.reference.likeness;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * What two titles have in common.
 *
 * @param kind the relation of the two
 * @param share words in common, of the words of the longer title, 0 to 1
 * @param onlyFirst words that only the first has, as compared
 * @param onlySecond words that only the second has
 */
public record TitleLikeness(
    Kind kind, double share, List<String> onlyFirst, List<String> onlySecond) {

  /** Relations of titles, the closest first. */
  public enum Kind {
    /** The same letters, but for spelling, signs, case and how numbers are written. */
    EQUAL,
    /** The same words, some with a slip or parted otherwise; no number differs. */
    SLIPS,
    /** One ends within the other and breaks off. */
    CUT,
    /** One is the other without its subtitle. */
    SUBTITLE_LEFT_OUT,
    /** The same before the subtitle, two subtitles. */
    OTHER_SUBTITLE,
    /** Most words are the same, and a word or a number differs. */
    SOME_WORDS_DIFFER,
    /** Different titles. */
    DIFFERENT;

    /** Whether the titles can well be those of one paper. */
    public boolean isOneTitle() {
      return this == EQUAL || this == SLIPS;
    }

    /** Whether one title is part of the other. */
    public boolean isPart() {
      return this == CUT || this == SUBTITLE_LEFT_OUT;
    }
  }

  /** Below this share titles are different; of ten words six or more agree by chance seldom. */
  private static final double SOME = 0.6;

  /** A shorter beginning than this is the beginning of many titles. Common practice, no source. */
  private static final int LETTERS_OF_A_BEGINNING = 20;

  /** Words that come and go between printings of one title. */
  private static final Set<String> SMALL =
      Set.of("a", "an", "the", "of", "and", "in", "on", "for", "to", "by");

  public TitleLikeness {
    onlyFirst = List.copyOf(onlyFirst);
    onlySecond = List.copyOf(onlySecond);
  }

  /** Whether a number stands in one title and not in the other, as in parts and yearly reports. */
  public boolean numbersDiffer() {
    return onlyFirst.stream().anyMatch(TitleLikeness::isNumber)
        || onlySecond.stream().anyMatch(TitleLikeness::isNumber);
  }

  /** Compares two titles. */
  public static TitleLikeness of(TitleWords one, TitleWords two) {
    String first = one.letters();
    String second = two.letters();
    if (first.equals(second)) {
      Kind kind = first.isEmpty() ? Kind.DIFFERENT : Kind.EQUAL;
      return new TitleLikeness(kind, first.isEmpty() ? 0 : 1, List.of(), List.of());
    }
    Alignment aligned = Alignment.of(one.words(), two.words());
    int longer = Math.max(one.words().size(), two.words().size());
    double share = longer == 0 ? 0 : (double) aligned.agreeing() / longer;
    Kind kind = kind(one, two, aligned, share);
    return new TitleLikeness(kind, share, aligned.onlyFirst(), aligned.onlySecond());
  }

  private static Kind kind(TitleWords one, TitleWords two, Alignment aligned, double share) {
    if (aligned.agreeing() > 0 && onlySmall(aligned)) {
      return Kind.SLIPS;
    }
    boolean firstIsShorter = one.words().size() <= two.words().size();
    TitleWords shorter = firstIsShorter ? one : two;
    TitleWords longer = firstIsShorter ? two : one;
    boolean numbersDiffer = shorterHasOtherNumbers(aligned, firstIsShorter);
    if (!numbersDiffer && isMain(shorter, longer)) {
      return Kind.SUBTITLE_LEFT_OUT;
    }
    if (isBeginning(shorter, longer)) {
      return Kind.CUT;
    }
    if (one.mainWords() < one.words().size()
        && two.mainWords() < two.words().size()
        && one.mainWords() >= 3
        && sameWords(main(one), main(two))) {
      return Kind.OTHER_SUBTITLE;
    }
    return share >= SOME ? Kind.SOME_WORDS_DIFFER : Kind.DIFFERENT;
  }

  private static boolean shorterHasOtherNumbers(Alignment aligned, boolean firstIsShorter) {
    List<String> only = firstIsShorter ? aligned.onlyFirst() : aligned.onlySecond();
    return only.stream().anyMatch(TitleLikeness::isNumber);
  }

  /** Whether the shorter title is all of the longer one before its subtitle. */
  private static boolean isMain(TitleWords shorter, TitleWords longer) {
    return longer.mainWords() < longer.words().size() && sameWords(shorter.words(), main(longer));
  }

  private static List<String> main(TitleWords title) {
    return title.words().subList(0, title.mainWords());
  }

  private static boolean sameWords(List<String> one, List<String> two) {
    if (String.join("", one).equals(String.join("", two))) {
      return true;
    }
    Alignment aligned = Alignment.of(one, two);
    return aligned.agreeing() > 0 && onlySmall(aligned);
  }

  /** Whether the longer title starts with the shorter one, whose last word may be broken. */
  private static boolean isBeginning(TitleWords shorter, TitleWords longer) {
    int whole = shorter.words().size() - 1;
    if (whole < 2 || whole >= longer.words().size()) {
      return false;
    }
    String start = String.join("", shorter.words().subList(0, whole));
    String last = shorter.words().get(whole);
    String letters = longer.letters();
    if (start.length() + last.length() < LETTERS_OF_A_BEGINNING) {
      return false;
    }
    if (letters.startsWith(start + last)) {
      return true;
    }
    List<String> beginning = longer.words().subList(0, whole);
    return shorter.cutOff()
        && sameWords(shorter.words().subList(0, whole), beginning)
        && longer.words().get(whole).startsWith(last);
  }

  /** Whether nothing but small words is left over, or small words with a slip. */
  private static boolean onlySmall(Alignment aligned) {
    return areSmall(aligned.onlyFirst(), aligned.onlySecond())
        && areSmall(aligned.onlySecond(), aligned.onlyFirst());
  }

  private static boolean areSmall(List<String> words, List<String> others) {
    return words.stream()
        .allMatch(
            word ->
                SMALL.contains(word)
                    || (!isNumber(word)
                        && others.stream()
                            .anyMatch(
                                other ->
                                    SMALL.contains(other)
                                        && EditDistance.between(word, other, 1) <= 1)));
  }

  private static boolean isNumber(String word) {
    // Asked for every two words of every two titles, so a plain loop.
    for (int at = 0; at < word.length(); at++) {
      if (word.charAt(at) >= '0' && word.charAt(at) <= '9') {
        return true;
      }
    }
    return false;
  }

  /** Words set side by side in their order, with as much agreement as there can be. */
  private record Alignment(int agreeing, List<String> onlyFirst, List<String> onlySecond) {
    static Alignment of(List<String> one, List<String> two) {
      boolean[][] agree = new boolean[one.size()][two.size()];
      int[][] best = new int[one.size() + 1][two.size() + 1];
      for (int i = one.size() - 1; i >= 0; i--) {
        for (int j = two.size() - 1; j >= 0; j--) {
          agree[i][j] = agree(one.get(i), two.get(j));
          best[i][j] = Math.max(best[i + 1][j], best[i][j + 1]);
          if (agree[i][j]) {
            best[i][j] = Math.max(best[i][j], 1 + best[i + 1][j + 1]);
          }
        }
      }
      List<String> first = new ArrayList<>();
      List<String> second = new ArrayList<>();
      int i = 0;
      int j = 0;
      while (i < one.size() && j < two.size()) {
        if (agree[i][j] && best[i][j] == 1 + best[i + 1][j + 1]) {
          i++;
          j++;
        } else if (best[i + 1][j] >= best[i][j + 1]) {
          first.add(one.get(i++));
        } else {
          second.add(two.get(j++));
        }
      }
      first.addAll(one.subList(i, one.size()));
      second.addAll(two.subList(j, two.size()));
      return joinedAgain(best[0][0], first, second);
    }

    /** Words that are one in the first title and two in the second agree after all. */
    private static Alignment joinedAgain(int agreeing, List<String> first, List<String> second) {
      String one = String.join("", first);
      String two = String.join("", second);
      boolean numbers = isNumber(one) || isNumber(two);
      if (!one.isEmpty()
          && !two.isEmpty()
          && !numbers
          && EditDistance.isSlip(one, two)
          && first.size() != second.size()) {
        return new Alignment(
            agreeing + Math.max(first.size(), second.size()), List.of(), List.of());
      }
      return new Alignment(agreeing, first, second);
    }

    private static boolean agree(String one, String two) {
      if (one.equals(two)) {
        return true;
      }
      // Two slips are the most that are forgiven, so longer differences need no closer look.
      return Math.abs(one.length() - two.length()) <= 2
          && Math.min(one.length(), two.length()) >= 3
          && !isNumber(one)
          && !isNumber(two)
          && EditDistance.isSlip(one, two)
          && !Opposites.are(one, two);
    }
  }
}
