package gapwise.reference.format;

import java.text.Normalizer;
import java.util.Map;
import java.util.Optional;

/**
 * Text of BibTeX as it is printed: accents, special letters, Greek, signs; braces and commands of
 * typesetting go, what they hold stays. An unknown command stays as it was, so that nothing is
 * lost.
 */
final class Tex {
  private static final Map<String, String> MARKS =
      Map.ofEntries(
          Map.entry("\"", "\u0308"),
          Map.entry("'", "\u0301"),
          Map.entry("`", "\u0300"),
          Map.entry("^", "\u0302"),
          Map.entry("~", "\u0303"),
          Map.entry("=", "\u0304"),
          Map.entry(".", "\u0307"),
          Map.entry("v", "\u030c"),
          Map.entry("H", "\u030b"),
          Map.entry("u", "\u0306"),
          Map.entry("c", "\u0327"),
          Map.entry("k", "\u0328"),
          Map.entry("r", "\u030a"),
          Map.entry("d", "\u0323"),
          Map.entry("b", "\u0331"));

  private static final Map<String, String> LETTERS =
      Map.ofEntries(
          Map.entry("ss", "\u00df"),
          Map.entry("ae", "\u00e6"),
          Map.entry("AE", "\u00c6"),
          Map.entry("oe", "\u0153"),
          Map.entry("OE", "\u0152"),
          Map.entry("o", "\u00f8"),
          Map.entry("O", "\u00d8"),
          Map.entry("l", "\u0142"),
          Map.entry("L", "\u0141"),
          Map.entry("aa", "\u00e5"),
          Map.entry("AA", "\u00c5"),
          Map.entry("i", "\u0131"),
          Map.entry("j", "\u0237"),
          Map.entry("dh", "\u00f0"),
          Map.entry("th", "\u00fe"),
          Map.entry("dj", "\u0111"),
          Map.entry("textendash", "\u2013"),
          Map.entry("textemdash", "\u2014"),
          Map.entry("textquoteright", "\u2019"),
          Map.entry("textquoteleft", "\u2018"),
          Map.entry("textregistered", "\u00ae"),
          Map.entry("texttrademark", "\u2122"),
          Map.entry("textdegree", "\u00b0"),
          Map.entry("degree", "\u00b0"),
          Map.entry("pm", "\u00b1"),
          Map.entry("times", "\u00d7"),
          Map.entry("leq", "\u2264"),
          Map.entry("le", "\u2264"),
          Map.entry("geq", "\u2265"),
          Map.entry("ge", "\u2265"),
          Map.entry("ldots", "\u2026"),
          Map.entry("dots", "\u2026"),
          Map.entry("textasciitilde", "~"),
          Map.entry("textbackslash", "\\"));

  /** Commands of which only what they hold is printed. */
  private static final String TYPESETTING =
      " textit textbf emph textrm textsc textsf texttt textsubscript textsuperscript mathrm mathit"
          + " mathbf it bf em rm sc sl tt textnormal ensuremath mbox text uppercase lowercase url"
          + " href noopsort ";

  private static final String GREEK =
      "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho -"
          + " sigma tau upsilon phi chi psi omega";

  private final String text;
  private final StringBuilder out = new StringBuilder();
  private int at;

  private Tex(String text) {
    this.text = text;
  }

  /** The text as printed. */
  static String plain(String tex) {
    if (tex.indexOf('\\') < 0
        && tex.indexOf('{') < 0
        && tex.indexOf('~') < 0
        && tex.indexOf('$') < 0
        && !tex.contains("--")
        && !tex.contains("``")
        && tex.indexOf('}') < 0) {
      return tex.replaceAll("\\s+", " ").strip();
    }
    Tex reading = new Tex(tex);
    reading.read();
    return Normalizer.normalize(reading.out.toString(), Normalizer.Form.NFC)
        .replaceAll("\\s+", " ")
        .strip();
  }

  private void read() {
    while (at < text.length()) {
      char sign = text.charAt(at);
      if (sign == '\\') {
        command();
      } else if (sign == '~') {
        out.append('\u00a0');
        at++;
      } else if (text.startsWith("---", at)) {
        out.append('\u2014');
        at += 3;
      } else if (text.startsWith("--", at)) {
        out.append('\u2013');
        at += 2;
      } else if (text.startsWith("``", at)) {
        out.append('\u201c');
        at += 2;
      } else if (text.startsWith("''", at)) {
        out.append('\u201d');
        at += 2;
      } else {
        if ("{}".indexOf(sign) < 0 && !(sign == '$' && closesMath())) {
          out.append(sign);
        }
        at++;
      }
    }
  }

  /** A dollar sign opens or closes a formula where there is another one; a price has one. */
  private boolean closesMath() {
    return text.indexOf('$') != text.lastIndexOf('$');
  }

  private void command() {
    at++;
    if (at >= text.length()) {
      out.append('\\');
      return;
    }
    char first = text.charAt(at);
    if (!Character.isLetter(first)) {
      at++;
      mark(String.valueOf(first))
          .ifPresentOrElse(out::append, () -> out.append(first == '\\' ? ' ' : first));
      return;
    }
    int start = at;
    while (at < text.length() && Character.isLetter(text.charAt(at)) && text.charAt(at) < 128) {
      at++;
    }
    String name = text.substring(start, at);
    boolean ended =
        at < text.length() && (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == '{');
    if (MARKS.containsKey(name) && ended) {
      mark(name).ifPresent(out::append);
      return;
    }
    letter(name).ifPresentOrElse(this::appendLetter, () -> typesetting(name));
  }

  private void typesetting(String name) {
    if (TYPESETTING.contains(" " + name + " ")) {
      skipBlank();
    } else {
      out.append('\\').append(name);
    }
  }

  private void appendLetter(String letter) {
    out.append(letter);
    if (text.startsWith("{}", at)) {
      at += 2;
    } else {
      skipBlank();
    }
  }

  private void skipBlank() {
    if (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
  }

  private static Optional<String> letter(String name) {
    if (LETTERS.containsKey(name)) {
      return Optional.ofNullable(LETTERS.get(name));
    }
    String small = name.substring(0, 1).toLowerCase(java.util.Locale.ROOT) + name.substring(1);
    int place =
        java.util.List.of(GREEK.split(" "))
            .indexOf(small.startsWith("var") ? small.substring(3) : small);
    if (place < 0) {
      return Optional.empty();
    }
    String greek = String.valueOf((char) ('\u03b1' + place));
    return Optional.of(small.equals(name) ? greek : greek.toUpperCase(java.util.Locale.ROOT));
  }

  /** The letter that comes now, with a mark; empty if the name is of no mark. */
  private Optional<String> mark(String name) {
    String mark = MARKS.get(name);
    if (mark == null || at >= text.length()) {
      return Optional.empty();
    }
    while (at < text.length() && (text.charAt(at) == '{' || text.charAt(at) == ' ')) {
      at++;
    }
    if (at >= text.length() || text.charAt(at) == '}') {
      return Optional.of("");
    }
    String base;
    if (text.charAt(at) == '\\') {
      at++;
      int start = at;
      while (at < text.length() && Character.isLetter(text.charAt(at)) && at - start < 2) {
        at++;
      }
      String inner = text.substring(start, at);
      base = inner.equals("i") ? "i" : inner.equals("j") ? "j" : letter(inner).orElse(inner);
      skipBlank();
    } else {
      int end = text.offsetByCodePoints(at, 1);
      base = text.substring(at, end);
      at = end;
    }
    return Optional.of(Normalizer.normalize(base + mark, Normalizer.Form.NFC));
  }
}
