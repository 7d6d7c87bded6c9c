package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.DefectStage;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The missing length of bone in a group of patients, exactly as reported.
 *
 * @param summary mean, median, range and so on, in the unit printed
 * @param overCentimetres a threshold of selection such as "over 4 cm"; never a mean
 * @param bands counts of patients by band of length
 * @param words the words of the paper
 * @param stage whether it was measured before or after debridement
 * @param shorteningIncluded whether shortening of the limb is added to the gap in the bone
 */
public record DefectLength(
    Optional<QuantitySummary> summary,
    OptionalDouble overCentimetres,
    List<Band> bands,
    Optional<String> words,
    Optional<DefectStage> stage,
    Optional<YesOrNo> shorteningIncluded) {

  /**
   * So many patients in a band of length.
   *
   * @param range the band
   * @param count 0 or more
   */
  public record Band(LengthRange range, int count) {
    public Band {
      Objects.requireNonNull(range, "range");
      if (count < 0) {
        throw new IllegalArgumentException("a count must not be negative, was " + count);
      }
    }
  }

  public DefectLength {
    Objects.requireNonNull(summary, "summary");
    Objects.requireNonNull(overCentimetres, "overCentimetres");
    bands = List.copyOf(bands);
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(stage, "stage");
    Objects.requireNonNull(shorteningIncluded, "shorteningIncluded");
    if (summary.isPresent() && summary.get().unit().dimension() != Unit.Dimension.LENGTH) {
      throw new IllegalArgumentException("a defect has a unit of length");
    }
    if (overCentimetres.isPresent() && !(overCentimetres.getAsDouble() > 0)) {
      throw new IllegalArgumentException("a threshold must be more than 0 cm");
    }
    if (summary.isEmpty() && overCentimetres.isEmpty() && bands.isEmpty() && words.isEmpty()) {
      throw new IllegalArgumentException("a defect length needs numbers or words");
    }
  }

  /** A defect known by a summary alone. */
  public static DefectLength of(QuantitySummary summary) {
    return new DefectLength(
        Optional.of(summary),
        OptionalDouble.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The summary carried into centimetres. */
  @JsonIgnore
  public Optional<QuantitySummary> centimetres() {
    return summary.map(numbers -> numbers.in(Unit.CENTIMETRES));
  }

  /** Mean or median in centimetres; a threshold or a bare range has none. */
  @JsonIgnore
  public OptionalDouble centreCentimetres() {
    Optional<QuantitySummary> numbers = centimetres();
    return numbers.isPresent() ? numbers.get().centre() : OptionalDouble.empty();
  }

  /**
   * The stretch of lengths that the report speaks of: shortest to longest; else the quartiles; else
   * one standard deviation around the mean; else the bands; else the centre alone; else from the
   * threshold upwards. Empty when there are words only.
   */
  @JsonIgnore
  public Optional<LengthRange> reportedRange() {
    Optional<QuantitySummary> numbers = centimetres();
    return numbers
        .flatMap(s -> between(s.minimum(), s.maximum()))
        .or(() -> numbers.flatMap(s -> between(s.lowerQuartile(), s.upperQuartile())))
        .or(() -> numbers.flatMap(DefectLength::aroundMean))
        .or(this::acrossBands)
        .or(() -> numbers.flatMap(s -> between(s.centre(), s.centre())))
        .or(
            () ->
                overCentimetres.isPresent()
                    ? Optional.of(LengthRange.from(overCentimetres.getAsDouble()))
                    : Optional.empty());
  }

  /**
   * The stretch that has both ends: shortest to longest; else the quartiles; else one standard
   * deviation around the mean; else the bands that have both ends, with the centre; else the centre
   * alone. Empty when the numbers leave an end open, or there are none.
   */
  @JsonIgnore
  public Optional<LengthRange> closedRange() {
    Optional<QuantitySummary> numbers = centimetres();
    return numbers
        .flatMap(s -> between(s.minimum(), s.maximum()))
        .or(() -> numbers.flatMap(s -> between(s.lowerQuartile(), s.upperQuartile())))
        .or(() -> numbers.flatMap(DefectLength::aroundMean))
        .or(this::acrossClosedBands)
        .or(() -> numbers.flatMap(s -> between(s.centre(), s.centre())));
  }

  /**
   * The stretch of which the numbers give one end alone: from a threshold, a shortest length or a
   * band upwards, or up to a longest length. Empty where shortest and longest are given; where
   * another stretch with both ends is, only a band counts that is open above and has patients in
   * it.
   */
  @JsonIgnore
  public Optional<LengthRange> oneSidedRange() {
    Optional<QuantitySummary> numbers = centimetres();
    OptionalDouble shortest = numbers.map(QuantitySummary::minimum).orElse(OptionalDouble.empty());
    OptionalDouble longest = numbers.map(QuantitySummary::maximum).orElse(OptionalDouble.empty());
    if (shortest.isPresent() && longest.isPresent()) {
      return Optional.empty();
    }
    OptionalDouble openBand =
        filled()
            .filter(range -> Double.isInfinite(range.toCentimetres()))
            .mapToDouble(LengthRange::fromCentimetres)
            .min();
    if (openBand.isPresent()) {
      return Optional.of(LengthRange.from(openBand.getAsDouble()));
    }
    if (closedRange().isPresent()) {
      return Optional.empty();
    }
    if (overCentimetres.isPresent()) {
      // "over 4 cm" has nobody at 4 cm, so that it does not touch 3 to 4 cm.
      return Optional.of(LengthRange.from(Math.nextUp(overCentimetres.getAsDouble())));
    }
    if (shortest.isPresent()) {
      return Optional.of(LengthRange.from(shortest.getAsDouble()));
    }
    return longest.isPresent()
        ? Optional.of(new LengthRange(0, longest.getAsDouble()))
        : Optional.empty();
  }

  private static Optional<LengthRange> between(OptionalDouble low, OptionalDouble high) {
    return low.isPresent() && high.isPresent()
        ? Optional.of(new LengthRange(low.getAsDouble(), high.getAsDouble()))
        : Optional.empty();
  }

  private static Optional<LengthRange> aroundMean(QuantitySummary s) {
    if (s.mean().isEmpty() || s.standardDeviation().isEmpty()) {
      return Optional.empty();
    }
    double mean = s.mean().getAsDouble();
    double deviation = s.standardDeviation().getAsDouble();
    return Optional.of(new LengthRange(Math.max(0, mean - deviation), mean + deviation));
  }

  private Optional<LengthRange> acrossBands() {
    return across(filled().toList());
  }

  private Optional<LengthRange> acrossClosedBands() {
    List<LengthRange> closed = new ArrayList<>();
    filled().filter(range -> Double.isFinite(range.toCentimetres())).forEach(closed::add);
    if (!closed.isEmpty() && centreCentimetres().isPresent()) {
      double centre = centreCentimetres().getAsDouble();
      closed.add(new LengthRange(centre, centre));
    }
    return across(closed);
  }

  private Stream<LengthRange> filled() {
    return bands.stream().filter(band -> band.count() > 0).map(Band::range);
  }

  private static Optional<LengthRange> across(List<LengthRange> ranges) {
    if (ranges.isEmpty()) {
      return Optional.empty();
    }
    double from = ranges.stream().mapToDouble(LengthRange::fromCentimetres).min().orElseThrow();
    double to = ranges.stream().mapToDouble(LengthRange::toCentimetres).max().orElseThrow();
    return Optional.of(new LengthRange(from, to));
  }
}
