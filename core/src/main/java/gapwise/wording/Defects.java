package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanRule;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

  /** Whether a number is known that a span can be drawn by; counts in bands alone are none. */
  public static boolean isDrawn(Optional<ArmDefect> defect) {
    return defect.flatMap(Defects::drawn).isPresent();
  }

  /** Whether anything but silence is known of it. */
  public static boolean isTold(ArmDefect defect) {
    return !words(defect).equals(new Span.NotReported().words());
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
    List<String> words = new ArrayList<>();
    Span span = span(Optional.of(defect));
    if (length.bands().isEmpty() || !(span instanceof Span.NotReported)) {
      words.add(span.words());
    }
    if (!length.bands().isEmpty()) {
      words.add(length.bands().stream().map(Defects::band).collect(Collectors.joining(", ")));
    }
    if (length.summary().isPresent() && length.overCentimetres().isPresent()) {
      String over = Shown.centimetres(length.overCentimetres().getAsDouble());
      words.add(say("wording.only-over", Map.of("length", over)));
    }
    length.stage().ifPresent(stage -> words.add(stage.label()));
    if (length.shorteningIncluded().filter(YesOrNo.YES::equals).isPresent()) {
      words.add(say("wording.shortening-included"));
    }
    if (defect.origin() == ArmDefect.Origin.REPORTED_FOR_ALL_ARMS) {
      words.add(say("wording.one-length-for-all"));
    }
    return String.join("; ", words);
  }

  private static String band(DefectLength.Band band) {
    return say("wording.band", Map.of("range", range(band.range()), "number", band.count()));
  }

  /** A stretch of lengths such as "5 to 8 cm", "over 5 cm" or "up to 8 cm". */
  public static String range(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return range.fromCentimetres() == 0
          ? say("wording.any-length")
          : say("wording.length-and-more", Map.of("from", from));
    }
    String to = Shown.centimetres(range.toCentimetres());
    if (from.equals(to)) {
      return say("wording.length", Map.of("length", from));
    }
    return range.fromCentimetres() == 0
        ? say("wording.length-up-to", Map.of("to", to))
        : say("wording.length-from-to", Map.of("from", from, "to", to));
  }
}
