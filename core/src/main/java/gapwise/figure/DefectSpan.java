package gapwise.figure;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Summary;
import gapwise.evidence.Unit;
import java.util.Optional;
import java.util.OptionalDouble;

/** The span of a missing length as a record holds it. */
public final class DefectSpan {
  private DefectSpan() {}

  /** The span of an arm; {@code NotReported} where nothing with a number is known. */
  public static Span of(Optional<ArmDefect> defect) {
    return defect.flatMap(DefectSpan::drawn).orElse(new Span.NotReported());
  }

  private static Optional<Span> drawn(ArmDefect defect) {
    if (defect.origin() == ArmDefect.Origin.FROM_PATIENTS) {
      double median =
          Summary.of(Unit.CENTIMETRES, defect.patientsCentimetres()).median().orElseThrow();
      return Optional.of(new Span.PerPatient(defect.patientsCentimetres(), median));
    }
    return drawn(defect.length());
  }

  private static Optional<Span> drawn(DefectLength length) {
    Optional<Summary> numbers = length.centimetres();
    return numbers
        .flatMap(DefectSpan::centred)
        .or(() -> numbers.flatMap(DefectSpan::rangeOnly))
        .or(() -> acrossBands(length))
        .or(() -> threshold(length));
  }

  private static Optional<Span> centred(Summary s) {
    if (s.mean().isPresent()) {
      return Optional.of(new Span.Mean(s.mean().getAsDouble(), spread(s)));
    }
    if (s.median().isPresent()) {
      return Optional.of(new Span.Median(s.median().getAsDouble(), spread(s)));
    }
    return Optional.empty();
  }

  private static Optional<Span.Rule> spread(Summary s) {
    if (both(s.minimum(), s.maximum())) {
      return Optional.of(Span.Rule.range(s.minimum().getAsDouble(), s.maximum().getAsDouble()));
    }
    if (both(s.lowerQuartile(), s.upperQuartile())) {
      return Optional.of(
          Span.Rule.quartiles(s.lowerQuartile().getAsDouble(), s.upperQuartile().getAsDouble()));
    }
    if (both(s.mean(), s.standardDeviation())) {
      return Optional.of(
          Span.Rule.standardDeviation(s.mean().getAsDouble(), s.standardDeviation().getAsDouble()));
    }
    return Optional.empty();
  }

  private static Optional<Span> rangeOnly(Summary s) {
    return both(s.minimum(), s.maximum())
        ? Optional.of(new Span.RangeOnly(s.minimum().getAsDouble(), s.maximum().getAsDouble()))
        : Optional.empty();
  }

  private static Optional<Span> acrossBands(DefectLength length) {
    return length.bands().isEmpty()
        ? Optional.empty()
        : length
            .reportedRange()
            .filter(range -> Double.isFinite(range.toCentimetres()))
            .map(range -> new Span.RangeOnly(range.fromCentimetres(), range.toCentimetres()));
  }

  private static Optional<Span> threshold(DefectLength length) {
    return length.overCentimetres().isPresent()
        ? Optional.of(new Span.Threshold(length.overCentimetres().getAsDouble()))
        : Optional.empty();
  }

  private static boolean both(OptionalDouble first, OptionalDouble second) {
    return first.isPresent() && second.isPresent();
  }
}
