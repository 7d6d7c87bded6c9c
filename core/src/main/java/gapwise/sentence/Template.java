package gapwise.sentence;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/**
 * A sentence with places: {@code {name}}, or {@code {name#one|many}}, which chooses by a whole
 * number, whose digits stand for {@code #} in what is chosen; that may hold places again. Values
 * are put in as they are and never read as places.
 */
final class Template {
  private final List<Piece> pieces;
  private final Set<String> places;

  private Template(List<Piece> pieces) {
    this.pieces = pieces;
    this.places = Collections.unmodifiableSet(namesIn(pieces));
  }

  private sealed interface Piece {}

  private record Text(String text) implements Piece {}

  private record Place(String name) implements Piece {}

  private record Choice(String name, Template one, Template many) implements Piece {}

  /** The number of the choice around it. */
  private record Digits() implements Piece {}

  /** Reads a template; throws IllegalArgumentException if its braces do not match. */
  static Template of(String text) {
    Reader reader = new Reader(text);
    Template template = reader.until("");
    if (reader.at < text.length()) {
      throw new IllegalArgumentException("a brace too many at " + reader.at + ": " + text);
    }
    return template;
  }

  /** The names of its places. */
  Set<String> places() {
    return places;
  }

  private static Set<String> namesIn(List<Piece> pieces) {
    Set<String> names = new TreeSet<>();
    for (Piece piece : pieces) {
      if (piece instanceof Place place) {
        names.add(place.name());
      } else if (piece instanceof Choice choice) {
        names.add(choice.name());
        names.addAll(choice.one().places());
        names.addAll(choice.many().places());
      }
    }
    return names;
  }

  /** The sentence; every place must have a value. */
  String filled(Map<String, ?> values) {
    return filled(values, "#");
  }

  private String filled(Map<String, ?> values, String digits) {
    StringBuilder sentence = new StringBuilder();
    for (Piece piece : pieces) {
      if (piece instanceof Text text) {
        sentence.append(text.text());
      } else if (piece instanceof Digits) {
        sentence.append(digits);
      } else if (piece instanceof Place place) {
        Object value = value(values, place.name());
        sentence.append(value instanceof Number number ? grouped(number) : value);
      } else if (piece instanceof Choice choice) {
        Number number = (Number) value(values, choice.name());
        Template chosen = number.longValue() == 1 ? choice.one() : choice.many();
        sentence.append(chosen.filled(values, grouped(number)));
      }
    }
    return sentence.toString();
  }

  private static Object value(Map<String, ?> values, String place) {
    return Objects.requireNonNull(values.get(place), () -> "no value for the place " + place);
  }

  private static String grouped(Number number) {
    return Counted.grouped(number.longValue());
  }

  /** Reads from left to right. */
  private static final class Reader {
    private final String text;
    private int at;

    Reader(String text) {
      this.text = text;
    }

    /** Everything up to one of these signs, or to the end. */
    Template until(String ends) {
      List<Piece> pieces = new ArrayList<>();
      StringBuilder plain = new StringBuilder();
      while (at < text.length() && ends.indexOf(text.charAt(at)) < 0 && text.charAt(at) != '}') {
        char sign = text.charAt(at);
        if (sign == '{' || sign == '#') {
          pieces.add(new Text(plain.toString()));
          plain.setLength(0);
          pieces.add(sign == '{' ? place() : digits());
        } else {
          plain.append(sign);
          at++;
        }
      }
      pieces.add(new Text(plain.toString()));
      return new Template(List.copyOf(pieces));
    }

    private Piece digits() {
      at++;
      return new Digits();
    }

    private Piece place() {
      int start = ++at;
      while (at < text.length() && Character.isLetterOrDigit(text.charAt(at))) {
        at++;
      }
      String name = text.substring(start, at);
      if (at < text.length() && text.charAt(at) == '#') {
        at++;
        Template one = until("|");
        expect('|');
        Template many = until("");
        expect('}');
        return new Choice(name, one, many);
      }
      expect('}');
      return new Place(name);
    }

    private void expect(char sign) {
      if (at >= text.length() || text.charAt(at) != sign) {
        throw new IllegalArgumentException("expected " + sign + " at " + at + ": " + text);
      }
      at++;
    }
  }
}
