package gapwise.wording;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanRule;
import gapwise.figure.value.Shown;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The missing length of an arm as a span to draw, and in words. */
public final class Defects {
  private Defects() {}

  /** The span of an arm; {@code NotReported} where nothing with a number is known. */
  public static Span span(Optional<ArmDefect> defect) {
    return defect.flatMap(Defects::drawn).orElse(new Span.NotReported());
  }

  private static Optional<Span> drawn(ArmDefect defect) {
    if (defect.origin() == ArmDefect.Origin.FROM_PATIENTS) {
      double median =
          QuantitySummary.of(Unit.CENTIMETRES, defect.patientsCentimetres()).median().orElseThrow();
      return Optional.of(new Span.PerPatient(defect.patientsCentimetres(), median));
    }
    return drawn(defect.length());
  }

  private static Optional<Span> drawn(DefectLength length) {
    Optional<QuantitySummary> numbers = length.centimetres();
    return numbers
        .flatMap(Defects::centred)
        .or(() -> numbers.flatMap(Defects::rangeOnly))
        .or(() -> acrossBands(length))
        .or(() -> threshold(length));
  }

  private static Optional<Span> centred(QuantitySummary s) {
    if (s.mean().isPresent()) {
      return Optional.of(new Span.Mean(s.mean().getAsDouble(), spread(s)));
    }
    if (s.median().isPresent()) {
      return Optional.of(new Span.Median(s.median().getAsDouble(), spread(s)));
    }
    return Optional.empty();
  }

  private static Optional<SpanRule> spread(QuantitySummary s) {
    if (both(s.minimum(), s.maximum())) {
      return Optional.of(SpanRule.range(s.minimum().getAsDouble(), s.maximum().getAsDouble()));
    }
    if (both(s.lowerQuartile(), s.upperQuartile())) {
      return Optional.of(
          SpanRule.quartiles(s.lowerQuartile().getAsDouble(), s.upperQuartile().getAsDouble()));
    }
    if (both(s.mean(), s.standardDeviation())) {
      return Optional.of(
          SpanRule.standardDeviation(s.mean().getAsDouble(), s.standardDeviation().getAsDouble()));
    }
    return Optional.empty();
  }

  private static Optional<Span> rangeOnly(QuantitySummary s) {
    return both(s.minimum(), s.maximum())
        ? Optional.of(new Span.RangeOnly(s.minimum().getAsDouble(), s.maximum().getAsDouble()))
        : Optional.empty();
  }

  /** Bands without an upper end are drawn like a threshold at the shortest length counted. */
  private static Optional<Span> acrossBands(DefectLength length) {
    if (length.bands().isEmpty()) {
      return Optional.empty();
    }
    return length
        .reportedRange()
        .flatMap(
            range -> {
              if (Double.isFinite(range.toCentimetres())) {
                return Optional.of(
                    new Span.RangeOnly(range.fromCentimetres(), range.toCentimetres()));
              }
              return range.fromCentimetres() > 0
                  ? Optional.of(new Span.Threshold(range.fromCentimetres()))
                  : Optional.<Span>empty();
            });
  }

  private static Optional<Span> threshold(DefectLength length) {
    return length.overCentimetres().isPresent()
        ? Optional.of(new Span.Threshold(length.overCentimetres().getAsDouble()))
        : Optional.empty();
  }

  private static boolean both(OptionalDouble first, OptionalDouble second) {
    return first.isPresent() && second.isPresent();
  }

  /** The length in words, with how it is known and what was counted as part of it. */
  public static String words(ArmDefect defect) {
    DefectLength length = defect.length();
    String bands =
        length.bands().stream()
            .map(band -> range(band.range()) + ": " + band.count())
            .collect(Collectors.joining(", "));
    Span span = span(Optional.of(defect));
    boolean onlyBands = span instanceof Span.NotReported && !bands.isEmpty();
    StringBuilder words = new StringBuilder(onlyBands ? bands : span.words());
    append(words, onlyBands ? "" : bands);
    if (length.summary().isPresent() && length.overCentimetres().isPresent()) {
      append(
          words, "only over " + Shown.centimetres(length.overCentimetres().getAsDouble()) + " cm");
    }
    length.stage().ifPresent(stage -> append(words, stage.label()));
    if (length.shorteningIncluded().filter(YesOrNo.YES::equals).isPresent()) {
      append(words, "shortening of the limb included");
    }
    if (defect.origin() == ArmDefect.Origin.REPORTED_FOR_ALL_ARMS) {
      append(words, "one value for all groups of the paper");
    }
    return words.toString();
  }

  private static void append(StringBuilder words, String more) {
    if (!more.isEmpty()) {
      words.append("; ").append(more);
    }
  }

  /** A stretch of lengths such as "5 to 8 cm", "over 5 cm" or "up to 8 cm". */
  public static String range(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return range.fromCentimetres() == 0 ? "any length" : from + " cm and more";
    }
    String to = Shown.centimetres(range.toCentimetres());
    if (from.equals(to)) {
      return from + " cm";
    }
    return range.fromCentimetres() == 0 ? "up to " + to + " cm" : from + " to " + to + " cm";
  }
}
