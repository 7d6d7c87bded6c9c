package gapwise.figure.span;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.Check;
import gapwise.figure.value.Shown;
import java.util.Map;
import java.util.Objects;

/**
 * A rule from one length to another.
 *
 * @param fromCentimetres 0 or more
 * @param toCentimetres not below {@code fromCentimetres}
 */
public record SpanRule(Kind kind, double fromCentimetres, double toCentimetres) {
  /** What a rule below a shaft can be; each is drawn in its own way. */
  public enum Kind {
    /** Shortest to longest patient. */
    SHORTEST_TO_LONGEST,
    /** Mean less and plus one standard deviation. */
    STANDARD_DEVIATION,
    /** First to third quartile. */
    QUARTILES
  }

  public SpanRule {
    Objects.requireNonNull(kind, "kind");
    Check.centimetres(fromCentimetres, "fromCentimetres");
    Check.centimetres(toCentimetres, "toCentimetres");
    if (fromCentimetres > toCentimetres) {
      throw new IllegalArgumentException(
          "a rule from " + fromCentimetres + " to " + toCentimetres + " cm runs backwards");
    }
  }

  /** Shortest to longest. */
  public static SpanRule range(double shortest, double longest) {
    return new SpanRule(Kind.SHORTEST_TO_LONGEST, shortest, longest);
  }

  /** Mean less and plus one standard deviation; a lower end below 0 cm is drawn at 0. */
  public static SpanRule standardDeviation(double mean, double standardDeviation) {
    Check.centimetres(standardDeviation, "standardDeviation");
    return new SpanRule(
        Kind.STANDARD_DEVIATION, Math.max(0, mean - standardDeviation), mean + standardDeviation);
  }

  /** First to third quartile. */
  public static SpanRule quartiles(double first, double third) {
    return new SpanRule(Kind.QUARTILES, first, third);
  }

  String words() {
    String from = Shown.centimetres(fromCentimetres);
    String to = Shown.centimetres(toCentimetres);
    String ends =
        from.equals(to)
            ? say("figure.span-of-one-length", Map.of("length", from))
            : say("figure.span", Map.of("from", from, "to", to));
    return switch (kind) {
      case SHORTEST_TO_LONGEST -> ends;
      case STANDARD_DEVIATION -> say("figure.span-within-deviation", Map.of("span", ends));
      case QUARTILES -> say("figure.span-of-middle-half", Map.of("span", ends));
    };
  }
}
