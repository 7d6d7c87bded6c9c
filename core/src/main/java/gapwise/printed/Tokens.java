package gapwise.printed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The pieces of a plain text: numbers, words, signs. */
final class Tokens {
  /**
   * Longest text that is taken apart; the text of a cell with one value has some twenty letters.
   */
  static final int LONGEST = 200;

  private static final Pattern TOKEN =
      Pattern.compile(
          "(?<number>(?:\\d{1,3}(?:[ '’]\\d{3})+(?!\\d)|\\d+)(?:[.,]\\d+)*|[.,]\\d+)"
              + "|(?<word>\\p{L}[\\p{L}0-9]*(?:[-/]\\p{L}+[0-9]?)*\\.?)"
              + "|(?<sign>[^\\s])");

  /** One to three digits, a comma, three digits: thousands or decimals? */
  private static final Pattern AMBIGUOUS = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

  private static final Pattern GROUPED = Pattern.compile("\\d{1,3}([ '’,.])\\d{3}(?:\\1\\d{3})*");

  /** One piece; a number keeps how it was printed. */
  record Token(Kind kind, String text, double value, int from, int to) {
    boolean is(String sign) {
      return kind == Kind.SIGN && text.equals(sign);
    }
  }

  enum Kind {
    NUMBER,
    WORD,
    SIGN
  }

  private Tokens() {}

  /** Empty where the text is too long or holds a number that cannot be read. */
  static Optional<List<Token>> of(String text) {
    if (text.length() > LONGEST) {
      return Optional.empty();
    }
    List<Token> tokens = new ArrayList<>();
    Matcher next = TOKEN.matcher(text);
    while (next.find()) {
      String piece = next.group();
      if (next.group("number") != null) {
        Optional<Double> value = number(piece);
        if (value.isEmpty()) {
          return Optional.empty();
        }
        tokens.add(new Token(Kind.NUMBER, piece, value.get(), next.start(), next.end()));
      } else {
        Kind kind = next.group("word") != null ? Kind.WORD : Kind.SIGN;
        tokens.add(new Token(kind, piece, 0, next.start(), next.end()));
      }
    }
    return Optional.of(tokens);
  }

  static boolean ambiguous(String number) {
    return AMBIGUOUS.matcher(number).matches();
  }

  /** The number; of one that is ambiguous the reading with decimals. */
  private static Optional<Double> number(String printed) {
    String plain = printed;
    Matcher grouped = GROUPED.matcher(printed);
    boolean twoGroups = printed.chars().filter(c -> c == ',' || c == '.').count() > 1;
    if (printed.contains(" ") || printed.contains("'") || printed.contains("’")) {
      plain = printed.replaceAll("[ '’]", "");
    } else if (twoGroups && grouped.matches()) {
      plain = printed.replaceAll("[.,]", "");
    } else if (twoGroups) {
      int last = Math.max(printed.lastIndexOf('.'), printed.lastIndexOf(','));
      String whole = printed.substring(0, last);
      char mark = printed.charAt(last);
      if (whole.indexOf(mark) >= 0 || !GROUPED.matcher(whole).matches()) {
        return Optional.empty();
      }
      plain = whole.replaceAll("[.,]", "") + "." + printed.substring(last + 1);
    }
    double value = Double.parseDouble(plain.replace(',', '.'));
    return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
  }

  /** How many decimals a number is printed with. */
  static int decimals(String number) {
    int mark = Math.max(number.lastIndexOf('.'), number.lastIndexOf(','));
    return mark < 0 ? 0 : number.length() - mark - 1;
  }
}
