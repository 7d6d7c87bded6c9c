package gapwise.printed;

import gapwise.evidence.unit.Unit;
import gapwise.printed.PrintedValue.Bound;
import gapwise.printed.Tokens.Kind;
import gapwise.printed.Tokens.Token;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Takes a phrase apart into numbers with the words that stand before them. A word that says nothing
 * of a number ends the reading: a sentence is no cell.
 */
final class Phrase {
  private static final Set<String> ABOUT =
      Set.of("about", "approximately", "approx", "ca", "circa", "c", "around");
  private static final Set<String> BELOW = Set.of("under", "below", "less");
  private static final Set<String> ABOVE = Set.of("over", "above", "more");
  private static final Set<String> EMPTY =
      Set.of(
          "than",
          "at",
          "in",
          "from",
          "per",
          "and",
          "value",
          "standard",
          "deviation",
          "error",
          "interquartile",
          "the",
          "was",
          "out");
  private static final Set<String> SIGNS =
      Set.of("(", ")", "[", "]", "{", "}", ",", ";", ":", "=", "|", "*");

  /** What the parts of a phrase turned out to be. */
  enum Shape {
    VALUE,
    DEVIATION,
    LIMITS,
    PERCENT,
    RATIO
  }

  /** One number or pair with what is said of it. */
  record Part(
      Shape shape,
      Token first,
      Token second,
      Optional<Statistic> said,
      boolean bracketed,
      Bound bound) {
    double a() {
      return first.value();
    }

    double b() {
      return second.value();
    }
  }

  private final String text;
  private final List<Token> tokens;
  private final List<Part> parts = new ArrayList<>();
  private final List<Unit> units = new ArrayList<>();
  private final List<Statistic> loose = new ArrayList<>();
  private Optional<Statistic> pending = Optional.empty();
  private Bound bound = Bound.EXACT;
  private int brackets;
  private boolean negative;
  private int at;

  private Phrase(String text, List<Token> tokens) {
    this.text = text;
    this.tokens = tokens;
  }

  static Optional<PrintedValue> read(String text) {
    return Tokens.of(text).flatMap(tokens -> new Phrase(text, tokens).read());
  }

  private Optional<PrintedValue> read() {
    while (at < tokens.size()) {
      Token token = tokens.get(at);
      boolean understood =
          switch (token.kind()) {
            case NUMBER -> number();
            case WORD -> word(token.text().toLowerCase(Locale.ROOT).replaceAll("\\.$", ""));
            case SIGN -> sign(token);
          };
      if (!understood) {
        return Optional.empty();
      }
    }
    return new PhraseMeaning(text, parts, units, loose, pending, negative).read();
  }

  private Optional<Token> ahead(int steps) {
    return at + steps < tokens.size() ? Optional.of(tokens.get(at + steps)) : Optional.empty();
  }

  private boolean aheadIs(int steps, String... signs) {
    return ahead(steps)
        .filter(t -> List.of(signs).contains(t.text().toLowerCase(Locale.ROOT)))
        .isPresent();
  }

  private boolean aheadIsNumber(int steps) {
    return ahead(steps).filter(t -> t.kind() == Kind.NUMBER).isPresent();
  }

  private boolean number() {
    Token first = tokens.get(at);
    if (aheadIs(1, "%") && isConfidence(2)) {
      // "95% CI": the level of an interval is no value of its own.
      pending = Optional.of(Statistic.CONFIDENCE);
      at += 3;
      return true;
    }
    // "64%-93%" has its sign twice.
    int second = aheadIs(1, "%") && aheadIs(2, "-", "to") ? 3 : 2;
    if (aheadIs(second - 1, "-", "to", ";", "bis") && aheadIsNumber(second)) {
      boolean pair = !aheadIs(second - 1, ";") || brackets > 0;
      if (pair) {
        return take(Shape.LIMITS, first, tokens.get(at + second), second + 1);
      }
    }
    if (aheadIs(1, ",")
        && brackets > 0
        && aheadIsNumber(2)
        && (said(Statistic.RANGE) || said(Statistic.QUARTILES) || said(Statistic.CONFIDENCE))) {
      return take(Shape.LIMITS, first, tokens.get(at + 2), 3);
    }
    if (aheadIs(1, "/", "of") && aheadIsNumber(2)) {
      return take(Shape.RATIO, first, tokens.get(at + 2), 3);
    }
    if (aheadIs(1, "out") && aheadIs(2, "of") && aheadIsNumber(3)) {
      return take(Shape.RATIO, first, tokens.get(at + 3), 4);
    }
    if (aheadIs(1, "%", "percent", "pct")) {
      return take(Shape.PERCENT, first, first, 2);
    }
    boolean deviates = at > 0 && tokens.get(at - 1).is("±");
    boolean alone = brackets > 0 && !parts.isEmpty() && !parts.get(parts.size() - 1).bracketed();
    boolean spread = said(Statistic.SD) || said(Statistic.SE);
    return take(
        deviates || (alone && (pending.isEmpty() || spread)) || (spread && !parts.isEmpty())
            ? Shape.DEVIATION
            : Shape.VALUE,
        first,
        first,
        1);
  }

  private boolean said(Statistic statistic) {
    return pending.filter(statistic::equals).isPresent();
  }

  private boolean isConfidence(int steps) {
    return ahead(steps)
        .filter(
            t ->
                Lexicon.statistic(t.text().toLowerCase(Locale.ROOT))
                    .filter(Statistic.CONFIDENCE::equals)
                    .isPresent())
        .isPresent();
  }

  private boolean take(Shape shape, Token first, Token second, int steps) {
    parts.add(new Part(shape, first, second, pending, brackets > 0, bound));
    pending = Optional.empty();
    bound = Bound.EXACT;
    at += steps;
    if (shape == Shape.LIMITS && aheadIs(0, "%")) {
      at++;
    }
    return true;
  }

  private boolean word(String word) {
    Optional<Unit> unit = Lexicon.unit(word);
    boolean afterNumber =
        !parts.isEmpty() && at > 0 && !tokens.get(at - 1).is("(") && !tokens.get(at - 1).is("[");
    Optional<Statistic> statistic = Lexicon.statistic(word);
    at++;
    // "min" after a number is a time, before one the smallest value.
    if (unit.isPresent() && (statistic.isEmpty() || afterNumber)) {
      units.add(unit.get());
      return true;
    }
    if (statistic.isPresent()) {
      if (aheadIsNumber(0) || !afterNumber || aheadIs(0, ":", "=", "<", ">", "±", "-", "(", "[")) {
        pending = statistic;
      } else {
        loose.add(statistic.get());
      }
      return true;
    }
    if (ABOUT.contains(word)) {
      bound = Bound.ABOUT;
      return true;
    }
    if (BELOW.contains(word) || ABOVE.contains(word)) {
      bound = BELOW.contains(word) ? Bound.BELOW : Bound.ABOVE;
      return true;
    }
    return EMPTY.contains(word);
  }

  private boolean sign(Token token) {
    at++;
    switch (token.text()) {
      case "(", "[", "{" -> brackets++;
      case ")", "]", "}" -> brackets = Math.max(0, brackets - 1);
      case "<" -> bound = Bound.BELOW;
      case ">", "≥" -> bound = Bound.ABOVE;
      case "~", "≈" -> bound = Bound.ABOUT;
      case "±" -> {
        return aheadIsNumber(0);
      }
      case "-", "+" -> {
        negative = negative || token.is("-");
        return aheadIsNumber(0) && parts.isEmpty() && at == 1;
      }
      default -> {
        return SIGNS.contains(token.text());
      }
    }
    return true;
  }
}
