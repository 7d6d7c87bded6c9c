package gapwise.reference.likeness;

import java.text.Normalizer;
import java.util.Locale;

/**
 * Small Latin letters and digits of any text, so that spellings can be held against each other:
 * marks go, joined letters are taken apart, Greek and Cyrillic are written in Latin letters. Other
 * scripts stay as they are, since what they sound like is not in the letters.
 */
public final class Letters {
  private static final String SPECIAL_FROM = "ßæœøłđðþıŋħŧəſ";
  private static final String[] SPECIAL_TO = {
    "ss", "ae", "oe", "o", "l", "d", "d", "th", "i", "n", "h", "t", "a", "s"
  };

  /** Small Greek letters from alpha to omega, as passports write them (ISO 843, type 2). */
  private static final String[] GREEK = {
    "a", "v", "g", "d", "e", "z", "i", "th", "i", "k", "l", "m", "n", "x", "o", "p", "r", "s", "s",
    "t", "y", "f", "ch", "ps", "o"
  };

  /** Small Cyrillic letters from a to ya, as passports write them (ICAO Doc 9303, part 3). */
  private static final String[] CYRILLIC = {
    "a", "b", "v", "g", "d", "e", "zh", "z", "i", "i", "k", "l", "m", "n", "o", "p", "r", "s", "t",
    "u", "f", "kh", "ts", "ch", "sh", "shch", "ie", "y", "", "e", "iu", "ia"
  };

  private Letters() {}

  /** Words of small Latin letters and digits, parted by one blank; apostrophes join. */
  public static String folded(String text) {
    String plain = PlainText.of(text);
    boolean marked = plain.chars().anyMatch(sign -> sign > '~');
    String apart =
        (marked ? Normalizer.normalize(plain, Normalizer.Form.NFKD) : plain)
            .toLowerCase(Locale.ROOT);
    StringBuilder folded = new StringBuilder(apart.length());
    boolean gap = false;
    for (int at = 0; at < apart.length(); at++) {
      char sign = apart.charAt(at);
      if (isMark(sign)) {
        continue;
      }
      if (Character.isLetterOrDigit(sign) || Character.isSurrogate(sign)) {
        if (gap && folded.length() > 0) {
          folded.append(' ');
        }
        gap = false;
        append(folded, sign);
      } else {
        gap = true;
      }
    }
    return folded.toString();
  }

  /** The same without blanks. */
  public static String joined(String text) {
    return folded(text).replace(" ", "");
  }

  /**
   * A name reduced to what its spellings have in common: umlauts written with an e, doubled letters
   * and some sounds that are romanised in several ways become one ({@code Mueller} and {@code
   * Müller}, {@code Christou} and {@code Hristu}). Two names with one skeleton need not be one
   * name.
   */
  public static String skeleton(String text) {
    String name =
        joined(text)
            .replace("ae", "a")
            .replace("oe", "o")
            .replace("ue", "u")
            .replace("ou", "u")
            .replace("kh", "h")
            .replace("ch", "h")
            .replace("ph", "f")
            .replace("ee", "i")
            .replace('y', 'i')
            .replace('w', 'v')
            .replace('c', 'k');
    StringBuilder single = new StringBuilder(name.length());
    for (int at = 0; at < name.length(); at++) {
      if (at == 0 || name.charAt(at) != name.charAt(at - 1)) {
        single.append(name.charAt(at));
      }
    }
    return single.toString();
  }

  /** Whether a text has letters, most of them neither Latin, Greek nor Cyrillic. */
  public static boolean isInAnotherScript(String text) {
    long all = text.codePoints().filter(Character::isLetter).count();
    long strange = text.codePoints().filter(Character::isLetter).filter(Letters::isStrange).count();
    return 2 * strange > all;
  }

  private static boolean isStrange(int letter) {
    Character.UnicodeScript script = Character.UnicodeScript.of(letter);
    return script != Character.UnicodeScript.LATIN
        && script != Character.UnicodeScript.GREEK
        && script != Character.UnicodeScript.CYRILLIC
        && script != Character.UnicodeScript.COMMON;
  }

  /** Marks on letters, marks that stand behind them by themselves, and signs within a word. */
  private static boolean isMark(char sign) {
    return Character.getType(sign) == Character.NON_SPACING_MARK
        || Character.getType(sign) == Character.ENCLOSING_MARK
        || Character.getType(sign) == Character.MODIFIER_LETTER
        || "'\u2018\u2019\u02bc`\u00b4\u00a8^~\u02c7\u02d8\u02da\u00b8\u02db\u02dd\u02d9"
                .indexOf(sign)
            >= 0;
  }

  private static void append(StringBuilder folded, char sign) {
    if (sign < 128) {
      folded.append(sign);
      return;
    }
    int special = SPECIAL_FROM.indexOf(sign);
    if (special >= 0) {
      folded.append(SPECIAL_TO[special]);
    } else if (sign >= '\u03b1' && sign <= '\u03c9') {
      folded.append(GREEK[sign - '\u03b1']);
    } else if (sign >= '\u0430' && sign <= '\u044f') {
      folded.append(CYRILLIC[sign - '\u0430']);
    } else {
      folded.append(sign);
    }
  }
}
