package gapwise.figure.span;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.Check;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Map;
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
  Optional<SpanRule> rule();

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
  record Mean(double centimetres, Optional<SpanRule> rule) implements Middle {
    public Mean {
      Check.centimetres(centimetres, "mean");
      Objects.requireNonNull(rule, "rule");
    }

    @Override
    public String words() {
      String mean = Shown.centimetres(centimetres);
      return rule.map(
              spread ->
                  say("figure.mean-and-spread", Map.of("mean", mean, "spread", spread.words())))
          .orElseGet(() -> say("figure.mean", Map.of("mean", mean)));
    }
  }

  /** A median, with what was reported of its spread. */
  record Median(double centimetres, Optional<SpanRule> rule) implements Middle {
    public Median {
      Check.centimetres(centimetres, "median");
      Objects.requireNonNull(rule, "rule");
    }

    @Override
    public String words() {
      String median = Shown.centimetres(centimetres);
      return rule.map(
              spread ->
                  say(
                      "figure.median-and-spread",
                      Map.of("median", median, "spread", spread.words())))
          .orElseGet(() -> say("figure.median", Map.of("median", median)));
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
      return say(
          "figure.span-of-patients",
          Map.of(
              "patients",
              lengthsCentimetres.size(),
              "span",
              SpanRule.range(shortest(), longest()).words()));
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
    public Optional<SpanRule> rule() {
      return Optional.of(SpanRule.range(shortest(), longest()));
    }
  }

  /** Only shortest and longest were reported; no middle is made up. */
  record RangeOnly(double shortestCentimetres, double longestCentimetres) implements Span {
    public RangeOnly {
      SpanRule.range(shortestCentimetres, longestCentimetres);
    }

    @Override
    public String words() {
      return say(
          "figure.only-range",
          Map.of("span", SpanRule.range(shortestCentimetres, longestCentimetres).words()));
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
    public Optional<SpanRule> rule() {
      return Optional.of(SpanRule.range(shortestCentimetres, longestCentimetres));
    }
  }

  /** A rule of selection such as "over 4 cm": the far end is open. */
  record Threshold(double overCentimetres) implements Span {
    public Threshold {
      Check.centimetres(overCentimetres, "overCentimetres");
    }

    @Override
    public String words() {
      return say("figure.no-average", Map.of("length", Shown.centimetres(overCentimetres)));
    }

    @Override
    public String label() {
      return say("figure.over", Map.of("length", Shown.centimetres(overCentimetres)));
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
    public Optional<SpanRule> rule() {
      return Optional.empty();
    }
  }

  /** Nothing was reported. */
  record NotReported() implements Span {
    @Override
    public String words() {
      return say("figure.not-reported");
    }

    @Override
    public String label() {
      return words();
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
    public Optional<SpanRule> rule() {
      return Optional.empty();
    }
  }

  private static OptionalDouble reach(double middle, Optional<SpanRule> rule) {
    return OptionalDouble.of(rule.map(r -> Math.max(middle, r.toCentimetres())).orElse(middle));
  }
}
