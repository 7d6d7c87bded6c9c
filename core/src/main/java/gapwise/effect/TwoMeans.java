package gapwise.effect;

import gapwise.effect.SpreadConversion.FromTest;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Means of two groups.
 *
 * @param intervention the group whose effect is asked
 * @param comparator the group it is set against
 * @param fromTest the test of their difference that the standard deviation of both comes from
 */
public record TwoMeans(ArmMean intervention, ArmMean comparator, FromTest fromTest)
    implements StudyData {
  /** Means whose spread comes from no test. */
  public TwoMeans(ArmMean intervention, ArmMean comparator) {
    this(intervention, comparator, FromTest.NONE);
  }

  /** Reads both groups; empty if something is missing or wrong. */
  static Optional<TwoMeans> read(Reported row) {
    Optional<ArmMean> intervention = ArmMean.read(row, "intervention");
    Optional<ArmMean> comparator = ArmMean.read(row, "comparator");
    return of(row, intervention, comparator);
  }

  /**
   * Both groups of a row. Where it reports both means and neither standard deviation, but a test of
   * their difference, both get the standard deviation that follows from {@code tStatistic}, else
   * from {@code pValue}, of a t test with one variance.
   */
  static Optional<TwoMeans> of(
      Reported row, Optional<ArmMean> intervention, Optional<ArmMean> comparator) {
    if (intervention.isEmpty() || comparator.isEmpty()) {
      return Optional.empty();
    }
    ArmMean i = intervention.get();
    ArmMean c = comparator.get();
    boolean spread = i.sd().isPresent() || c.sd().isPresent();
    return Optional.of(
        spread || i.fromMedian() || c.fromMedian() ? new TwoMeans(i, c) : tested(row, i, c));
  }

  private static TwoMeans tested(Reported row, ArmMean i, ArmMean c) {
    double difference = i.mean().getAsDouble() - c.mean().getAsDouble();
    OptionalDouble t = row.number("tStatistic");
    if (t.isEmpty() && row.isBoundOfP("pValue")) {
      return new TwoMeans(i, c, FromTest.SILENT);
    }
    OptionalDouble p = t.isPresent() ? OptionalDouble.empty() : row.optionalP("pValue");
    boolean told = t.isPresent() || p.isPresent();
    if (!told || i.n() + c.n() < 3) {
      return new TwoMeans(i, c);
    }
    OptionalDouble sd =
        t.isPresent()
            ? SpreadConversion.fromTStatistic(difference, t.getAsDouble(), i.n(), c.n())
            : SpreadConversion.fromPValue(difference, p.getAsDouble(), i.n(), c.n());
    return sd.isEmpty()
        ? new TwoMeans(i, c, FromTest.SILENT)
        : new TwoMeans(
            i.withSd(sd.getAsDouble()),
            c.withSd(sd.getAsDouble()),
            t.isPresent() ? FromTest.T_STATISTIC : FromTest.P_VALUE);
  }

  /** The difference without its variance, and why that is not known. */
  StudyEffect withoutSpread(double estimate) {
    if (fromTest == FromTest.SILENT) {
      return StudyEffect.withoutVariance(
          estimate, "missing-standard-deviation", Measures.SILENT_TEST);
    }
    boolean first = intervention.squaredStandardError().isEmpty();
    return Measures.withoutSpread(estimate, first ? intervention : comparator);
  }

  /** Whether either mean or spread was worked out from a median. */
  boolean fromMedian() {
    return intervention.fromMedian() || comparator.fromMedian();
  }

  /** Whether the median of either group lies too far to one side for values near normal. */
  boolean looksSkewed() {
    return intervention.looksSkewed() || comparator.looksSkewed();
  }

  @Override
  public List<ArmMean> means() {
    return List.of(intervention, comparator);
  }

  @Override
  public int arms() {
    return 2;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.of(intervention.n() + comparator.n());
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.empty();
  }

  /** What measures of two means share: each study has its effect alone, and what its means tell. */
  interface Measured extends Measure<TwoMeans> {
    /** The effect of one study. */
    StudyEffect effect(TwoMeans study);

    @Override
    default List<StudyEffect> effects(List<TwoMeans> studies) {
      return studies.stream().map(this::effect).toList();
    }

    @Override
    default boolean fromMedian(TwoMeans study) {
      return study.fromMedian();
    }

    @Override
    default boolean looksSkewed(TwoMeans study) {
      return study.looksSkewed();
    }

    @Override
    default FromTest fromTest(TwoMeans study) {
      return study.fromTest();
    }
  }
}
