package gapwise.figure.span;

import gapwise.figure.value.Check;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The missing length of bone of one group of patients, kept as it was reported. Drawn as a shaft
 * with the gap to scale. All lengths are centimetres. It computes nothing: a middle value that a
 * paper does not give arrives computed.
 */
public sealed interface Span {

  /** How it was reported, in words: "mean 5.1 cm, 3 to 8 cm". */
  String words();

  /** The number or short words that stand inside the gap. */
  String label();

  /** Length at which the far bone end is drawn; empty where nothing was reported. */
  OptionalDouble gapCentimetres();

  /** Greatest length that the drawing reaches, so that a column of spans can share one scale. */
  OptionalDouble reachCentimetres();

  /** What the thin rule below the shaft shows. */
  Optional<Rule> rule();

  /** What a rule below a shaft can be; each is drawn in its own way. */
  enum RuleKind {
    /** Shortest to longest patient. */
    SHORTEST_TO_LONGEST,
    /** Mean less and plus one standard deviation. */
    STANDARD_DEVIATION,
    /** First to third quartile. */
    QUARTILES
  }

  /**
   * A rule from one length to another.
   *
   * @param fromCentimetres 0 or more
   * @param toCentimetres not below {@code fromCentimetres}
   */
  record Rule(RuleKind kind, double fromCentimetres, double toCentimetres) {
    public Rule {
      Objects.requireNonNull(kind, "kind");
      Check.centimetres(fromCentimetres, "fromCentimetres");
      Check.centimetres(toCentimetres, "toCentimetres");
      if (fromCentimetres > toCentimetres) {
        throw new IllegalArgumentException(
            "a rule from " + fromCentimetres + " to " + toCentimetres + " cm runs backwards");
      }
    }

    /** Shortest to longest. */
    public static Rule range(double shortest, double longest) {
      return new Rule(RuleKind.SHORTEST_TO_LONGEST, shortest, longest);
    }

    /** Mean less and plus one standard deviation; a lower end below 0 cm is drawn at 0. */
    public static Rule standardDeviation(double mean, double standardDeviation) {
      Check.centimetres(standardDeviation, "standardDeviation");
      return new Rule(
          RuleKind.STANDARD_DEVIATION,
          Math.max(0, mean - standardDeviation),
          mean + standardDeviation);
    }

    /** First to third quartile. */
    public static Rule quartiles(double first, double third) {
      return new Rule(RuleKind.QUARTILES, first, third);
    }

    String words() {
      String from = Shown.centimetres(fromCentimetres);
      String to = Shown.centimetres(toCentimetres);
      String ends = (from.equals(to) ? from : from + " to " + to) + " cm";
      return switch (kind) {
        case SHORTEST_TO_LONGEST -> ends;
        case STANDARD_DEVIATION -> ends + " within one SD";
        case QUARTILES -> "middle half " + ends;
      };
    }
  }

  /** A middle value that a paper gives, with what was reported of its spread. */
  sealed interface Middle extends Span {
    double centimetres();

    @Override
    default String label() {
      return Shown.centimetres(centimetres());
    }

    @Override
    default OptionalDouble gapCentimetres() {
      return OptionalDouble.of(centimetres());
    }

    @Override
    default OptionalDouble reachCentimetres() {
      return reach(centimetres(), rule());
    }
  }

  /** A mean, with what was reported of its spread. */
  record Mean(double centimetres, Optional<Rule> rule) implements Middle {
    public Mean {
      Check.centimetres(centimetres, "mean");
      Objects.requireNonNull(rule, "rule");
    }

    @Override
    public String words() {
      return middleWords("mean", centimetres, rule);
    }
  }

  /** A median, with what was reported of its spread. */
  record Median(double centimetres, Optional<Rule> rule) implements Middle {
    public Median {
      Check.centimetres(centimetres, "median");
      Objects.requireNonNull(rule, "rule");
    }

    @Override
    public String words() {
      return middleWords("median", centimetres, rule);
    }
  }

  /**
   * Every patient's own length, a tick each below the shaft.
   *
   * @param lengthsCentimetres at least one
   * @param medianCentimetres their median, computed by the caller
   */
  record PerPatient(List<Double> lengthsCentimetres, double medianCentimetres) implements Span {
    public PerPatient {
      lengthsCentimetres = List.copyOf(lengthsCentimetres);
      if (lengthsCentimetres.isEmpty()) {
        throw new IllegalArgumentException("lengths per patient need at least one patient");
      }
      lengthsCentimetres.forEach(length -> Check.centimetres(length, "length of a patient"));
      Check.centimetres(medianCentimetres, "median");
    }

    private double shortest() {
      return lengthsCentimetres.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    }

    private double longest() {
      return lengthsCentimetres.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    }

    @Override
    public String words() {
      String patients = lengthsCentimetres.size() == 1 ? "1 patient" : "each patient";
      return patients + ", " + Rule.range(shortest(), longest()).words();
    }

    @Override
    public String label() {
      return Shown.centimetres(medianCentimetres);
    }

    @Override
    public OptionalDouble gapCentimetres() {
      return OptionalDouble.of(medianCentimetres);
    }

    @Override
    public OptionalDouble reachCentimetres() {
      return OptionalDouble.of(Math.max(medianCentimetres, longest()));
    }

    @Override
    public Optional<Rule> rule() {
      return Optional.of(Rule.range(shortest(), longest()));
    }
  }

  /** Only shortest and longest were reported; no middle is made up. */
  record RangeOnly(double shortestCentimetres, double longestCentimetres) implements Span {
    public RangeOnly {
      Rule.range(shortestCentimetres, longestCentimetres);
    }

    @Override
    public String words() {
      return "only the range, " + Rule.range(shortestCentimetres, longestCentimetres).words();
    }

    @Override
    public String label() {
      return Shown.centimetres(shortestCentimetres)
          + "\u2013"
          + Shown.centimetres(longestCentimetres);
    }

    @Override
    public OptionalDouble gapCentimetres() {
      return OptionalDouble.of(longestCentimetres);
    }

    @Override
    public OptionalDouble reachCentimetres() {
      return OptionalDouble.of(longestCentimetres);
    }

    @Override
    public Optional<Rule> rule() {
      return Optional.of(Rule.range(shortestCentimetres, longestCentimetres));
    }
  }

  /** A rule of selection such as "over 4 cm": the far end is open. */
  record Threshold(double overCentimetres) implements Span {
    public Threshold {
      Check.centimetres(overCentimetres, "overCentimetres");
    }

    @Override
    public String words() {
      return label() + " cm, no average";
    }

    @Override
    public String label() {
      return "over " + Shown.centimetres(overCentimetres);
    }

    @Override
    public OptionalDouble gapCentimetres() {
      return OptionalDouble.of(overCentimetres);
    }

    @Override
    public OptionalDouble reachCentimetres() {
      return OptionalDouble.of(overCentimetres);
    }

    @Override
    public Optional<Rule> rule() {
      return Optional.empty();
    }
  }

  /** Nothing was reported. */
  record NotReported() implements Span {
    @Override
    public String words() {
      return "not reported";
    }

    @Override
    public String label() {
      return "not reported";
    }

    @Override
    public OptionalDouble gapCentimetres() {
      return OptionalDouble.empty();
    }

    @Override
    public OptionalDouble reachCentimetres() {
      return OptionalDouble.empty();
    }

    @Override
    public Optional<Rule> rule() {
      return Optional.empty();
    }
  }

  private static String middleWords(String name, double centimetres, Optional<Rule> rule) {
    return name
        + " "
        + Shown.centimetres(centimetres)
        + " cm"
        + rule.map(r -> ", " + r.words()).orElse("");
  }

  private static OptionalDouble reach(double middle, Optional<Rule> rule) {
    return OptionalDouble.of(rule.map(r -> Math.max(middle, r.toCentimetres())).orElse(middle));
  }
}
