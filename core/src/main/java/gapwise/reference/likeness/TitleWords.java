package gapwise.reference.likeness;

import gapwise.printed.Numerals;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A title made ready to be compared: its words in one spelling, numbers as digits.
 *
 * @param words all words, small letters and digits
 * @param printed the same words nearly as printed, for people
 * @param mainWords how many of them stand before the first sign that opens a subtitle; all of them
 *     where there is none
 * @param cutOff whether it ends in dots, as a title does that was cut
 * @param bracketed whether the whole stands in square brackets, as databases print translations
 */
public record TitleWords(
    List<String> words, List<String> printed, int mainWords, boolean cutOff, boolean bracketed) {
  private static final Pattern SUBTITLE =
      Pattern.compile(
          "\\s*[:;?!]\\s+|\\.\\s+(?=\\p{Lu})|\\s+[-\\u2013\\u2014]+\\s+|\\s*\\u2014\\s*");

  private static final Pattern CUT = Pattern.compile("(?:\\.\\.\\.|\\u2026)[\\])\"']*$");

  /** Before these a single i, v or x is a number. */
  private static final Set<String> NUMBERED =
      Set.of(
          "part",
          "type",
          "grade",
          "class",
          "stage",
          "phase",
          "level",
          "group",
          "degree",
          "zone",
          "category",
          "generation",
          "chapter",
          "volume",
          "study",
          "trial",
          "report");

  public TitleWords {
    words = List.copyOf(words);
    printed = List.copyOf(printed);
    if (printed.size() != words.size()) {
      throw new IllegalArgumentException("a title needs each word as compared and as printed");
    }
  }

  /** Reads a title as printed. */
  public static TitleWords of(String title) {
    String plain = PlainText.of(title);
    boolean cut = CUT.matcher(plain).find();
    boolean bracketed = plain.startsWith("[") && plain.replaceAll("[.\\s]+$", "").endsWith("]");
    plain = CUT.matcher(plain).replaceAll("");
    Matcher sign = SUBTITLE.matcher(plain);
    Spelled all = new Spelled();
    if (sign.find() && sign.start() > 0 && sign.end() < plain.length()) {
      all.add(plain.substring(0, sign.start()));
      int main = all.words.size();
      all.add(plain.substring(sign.end()));
      return new TitleWords(all.words, all.printed, main, cut, bracketed);
    }
    all.add(plain);
    return new TitleWords(all.words, all.printed, all.words.size(), cut, bracketed);
  }

  /** All words joined, so that "re-operation" and "reoperation" are one. */
  public String letters() {
    return String.join("", words);
  }

  /** The words before the subtitle, joined. */
  public String mainLetters() {
    return String.join("", words.subList(0, mainWords));
  }

  /** Words in one spelling beside the words as printed. */
  private static final class Spelled {
    private final List<String> words = new ArrayList<>();
    private final List<String> printed = new ArrayList<>();

    void add(String text) {
      String[] raw = Letters.folded(greekByName(text)).split(" ");
      for (int at = 0; at < raw.length; at++) {
        String word = raw[at];
        if (word.isEmpty()) {
          continue;
        }
        OptionalInt tens = Numerals.tens(word);
        OptionalInt unit = at + 1 < raw.length ? Numerals.unit(raw[at + 1]) : OptionalInt.empty();
        if (tens.isPresent() && unit.isPresent() && unit.getAsInt() > 0 && unit.getAsInt() < 10) {
          words.add("" + (tens.getAsInt() + unit.getAsInt()));
          printed.add(word + "-" + raw[at + 1]);
          at++;
        } else {
          String before = at == 0 ? "" : raw[at - 1];
          words.add(number(word, before).orElseGet(() -> Spelling.one(word)));
          printed.add(word);
        }
      }
    }
  }

  private static java.util.Optional<String> number(String word, String before) {
    OptionalInt value = Numerals.unit(word);
    if (value.isEmpty()) {
      value = Numerals.tens(word);
    }
    if (value.isEmpty() && (word.length() > 1 || NUMBERED.contains(before))) {
      value = Numerals.roman(word);
    }
    return value.isPresent()
        ? java.util.Optional.of("" + value.getAsInt())
        : java.util.Optional.empty();
  }

  /** In a title a Greek letter by itself is a sign, not a sound: β is beta. */
  private static String greekByName(String text) {
    StringBuilder named = new StringBuilder(text.length() + 8);
    String small = text.toLowerCase(Locale.ROOT);
    if (small.length() != text.length()) {
      return text;
    }
    for (int at = 0; at < text.length(); at++) {
      boolean alone =
          (at == 0 || !isGreek(small.charAt(at - 1)))
              && (at + 1 == small.length() || !isGreek(small.charAt(at + 1)));
      String name = alone ? PlainText.nameOfGreek(small.charAt(at)).orElse("") : "";
      named.append(name.isEmpty() ? String.valueOf(text.charAt(at)) : name);
    }
    return named.toString();
  }

  private static boolean isGreek(char letter) {
    return Character.UnicodeScript.of(letter) == Character.UnicodeScript.GREEK;
  }
}
