package gapwise.reference.likeness;

import java.text.Normalizer;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Text as a reader sees it: without markup, entities, invisible signs and letters drawn as one. */
public final class PlainText {
  private static final Pattern MARKUP =
      Pattern.compile("</?[A-Za-z][A-Za-z0-9:]{0,15}(?:\\s[^<>]{0,200})?/?>");

  private static final Pattern ENTITY =
      Pattern.compile("&(#[0-9]{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z]{2,8});");

  private static final Pattern GREEK_COMMAND =
      Pattern.compile("\\$?\\\\([a-zA-Z]{2,7})(?![a-zA-Z])\\s?\\$?");

  /** Soft hyphen, blanks without width, joiners, marks of direction, byte order mark. */
  private static final Pattern INVISIBLE =
      Pattern.compile("[\\u00AD\\u200B-\\u200F\\u202A-\\u202E\\u2060\\uFEFF]|\\p{Cntrl}&&[^\\s]");

  private static final String[] GREEK_NAMES = {
    "alpha", "beta", "gamma", "delta", "epsilon", "zeta", "eta", "theta", "iota", "kappa", "lambda",
    "mu", "nu", "xi", "omicron", "pi", "rho", "", "sigma", "tau", "upsilon", "phi", "chi", "psi",
    "omega"
  };

  /** Entities of HTML other than Greek letters that stand in titles and names. */
  private static final Map<String, String> NAMED =
      Map.ofEntries(
          Map.entry("amp", "&"),
          Map.entry("lt", "<"),
          Map.entry("gt", ">"),
          Map.entry("quot", "\""),
          Map.entry("apos", "'"),
          Map.entry("nbsp", " "),
          Map.entry("ndash", "\u2013"),
          Map.entry("mdash", "\u2014"),
          Map.entry("lsquo", "\u2018"),
          Map.entry("rsquo", "\u2019"),
          Map.entry("ldquo", "\u201c"),
          Map.entry("rdquo", "\u201d"),
          Map.entry("hellip", "\u2026"),
          Map.entry("shy", ""),
          Map.entry("times", "\u00d7"),
          Map.entry("plusmn", "\u00b1"),
          Map.entry("deg", "\u00b0"),
          Map.entry("micro", "\u03bc"),
          Map.entry("szlig", "\u00df"),
          Map.entry("aelig", "\u00e6"),
          Map.entry("AElig", "\u00c6"),
          Map.entry("oelig", "\u0153"),
          Map.entry("oslash", "\u00f8"),
          Map.entry("Oslash", "\u00d8"),
          Map.entry("aring", "\u00e5"),
          Map.entry("Aring", "\u00c5"));

  /** Endings of entities such as {@code eacute}, and the mark that each sets on the letter. */
  private static final Map<String, String> MARKS =
      Map.of(
          "acute", "\u0301",
          "grave", "\u0300",
          "circ", "\u0302",
          "uml", "\u0308",
          "tilde", "\u0303",
          "cedil", "\u0327",
          "caron", "\u030c");

  private PlainText() {}

  /** The text without what only a machine or a printer needs; blanks become one each. */
  public static String of(String text) {
    if (isPlain(text)) {
      return text;
    }
    String plain = text;
    if (plain.indexOf('&') >= 0) {
      plain = ENTITY.matcher(plain).replaceAll(PlainText::entity);
    }
    if (plain.indexOf('<') >= 0) {
      plain = MARKUP.matcher(plain).replaceAll("");
    }
    if (plain.indexOf('\\') >= 0) {
      plain = GREEK_COMMAND.matcher(plain).replaceAll(PlainText::command);
    }
    plain = INVISIBLE.matcher(plain).replaceAll("");
    return Normalizer.normalize(plain, Normalizer.Form.NFKC).replaceAll("\\s+", " ").strip();
  }

  /** Most texts are plain already; looking costs less than any pattern. */
  private static boolean isPlain(String text) {
    char before = ' ';
    for (int at = 0; at < text.length(); at++) {
      char sign = text.charAt(at);
      boolean twoBlanks = sign == ' ' && before == ' ';
      // Latin letters with marks up to U+017F are whole by themselves.
      boolean letter =
          sign >= '\u00c0'
              && sign <= '\u017f'
              && sign != '\u0132'
              && sign != '\u0133'
              && sign != '\u013f'
              && sign != '\u0140'
              && sign != '\u0149'
              && sign != '\u017f';
      if (twoBlanks
          || sign == '&'
          || sign == '<'
          || sign == '\\'
          || sign < ' '
          || (sign > '~' && !letter)) {
        return false;
      }
      before = sign;
    }
    return before != ' ';
  }

  /** The Greek letter of a name, small; empty for any other word. */
  static Optional<String> greek(String name) {
    for (int at = 0; at < GREEK_NAMES.length; at++) {
      if (GREEK_NAMES[at].equals(name)) {
        return Optional.of(String.valueOf((char) ('\u03b1' + at)));
      }
    }
    return Optional.empty();
  }

  /** The name of a small Greek letter without marks; empty for any other. */
  static Optional<String> nameOfGreek(char letter) {
    int at = letter == '\u03c2' ? 18 : letter - '\u03b1';
    return at >= 0 && at < GREEK_NAMES.length ? Optional.of(GREEK_NAMES[at]) : Optional.empty();
  }

  private static String entity(java.util.regex.MatchResult found) {
    String name = found.group(1);
    return Matcher.quoteReplacement(named(name).orElse(found.group()));
  }

  private static Optional<String> named(String name) {
    if (name.charAt(0) == '#') {
      boolean hexadecimal = name.charAt(1) == 'x' || name.charAt(1) == 'X';
      int code =
          hexadecimal
              ? Integer.parseInt(name.substring(2), 16)
              : Integer.parseInt(name.substring(1));
      return Character.isValidCodePoint(code)
          ? Optional.of(Character.toString(code))
          : Optional.empty();
    }
    if (NAMED.containsKey(name)) {
      return Optional.ofNullable(NAMED.get(name));
    }
    String mark = MARKS.get(name.substring(1));
    if (mark != null) {
      return Optional.of(Normalizer.normalize(name.charAt(0) + mark, Normalizer.Form.NFC));
    }
    boolean capital = Character.isUpperCase(name.charAt(0));
    return greek(name.toLowerCase(java.util.Locale.ROOT))
        .map(letter -> capital ? letter.toUpperCase(java.util.Locale.ROOT) : letter);
  }

  private static String command(java.util.regex.MatchResult found) {
    String name = found.group(1).toLowerCase(java.util.Locale.ROOT);
    return Matcher.quoteReplacement(greek(name).orElse(found.group()));
  }
}
