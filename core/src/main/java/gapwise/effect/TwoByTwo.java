package gapwise.effect;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Events in two groups: the fourfold table of a study.
 *
 * @param intervention the group whose effect is asked
 * @param comparator the group it is set against
 */
public record TwoByTwo(ArmCounts intervention, ArmCounts comparator) implements StudyData {

  /** Reads both groups; empty if something is missing or wrong. */
  static Optional<TwoByTwo> read(Reported row) {
    Optional<ArmCounts> intervention = ArmCounts.read(row, "intervention");
    Optional<ArmCounts> comparator = ArmCounts.read(row, "comparator");
    return intervention.flatMap(i -> comparator.map(c -> new TwoByTwo(i, c)));
  }

  /** Events in both groups. */
  public double eventTotal() {
    return intervention.events() + comparator.events();
  }

  /** Patients without the event in both groups. */
  public double nonEventTotal() {
    return intervention.nonEvents() + comparator.nonEvents();
  }

  /** All patients. */
  public double total() {
    return intervention.total() + comparator.total();
  }

  /**
   * Variance of the events of one group given all margins, n1 n2 m (N-m) / (N^2 (N-1)); 0 for a
   * table that says nothing.
   */
  public double hypergeometricVariance() {
    double n = total();
    return n <= 1
        ? 0
        : intervention.total()
            / n
            * (comparator.total() / n)
            * eventTotal()
            * nonEventTotal()
            / (n - 1);
  }

  /** Whether any of the four cells is 0. */
  boolean hasZero() {
    return intervention.events() == 0
        || comparator.events() == 0
        || intervention.nonEvents() == 0
        || comparator.nonEvents() == 0;
  }

  /** The table with something added to each of the four cells, so totals grow by twice as much. */
  TwoByTwo plus(double added) {
    return new TwoByTwo(intervention.plus(added), comparator.plus(added));
  }

  @Override
  public int arms() {
    return 2;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.of(total());
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.of(eventTotal());
  }
}
