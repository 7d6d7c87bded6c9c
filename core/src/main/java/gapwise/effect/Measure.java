package gapwise.effect;

import java.util.List;
import java.util.Optional;

/**
 * One measure on one scale: how a row is read, the effect of a study, the way back to what people
 * read. Each measure is one class, listed in {@link Measures}.
 *
 * @param <D> what a study must report
 */
public interface Measure<D extends StudyData> {
  /** Every role a row may have for this measure, the ones it cannot do without first. */
  List<Role> roles();

  /**
   * Reads a row.
   *
   * @return empty if something is missing or wrong, which has then been noted in the row
   */
  Optional<D> read(Reported row);

  /**
   * The effect of each study, in their order. All at once, because what is added to zero cells can
   * depend on the other studies.
   */
  List<StudyEffect> effects(List<D> studies);

  /** The way back to what people read, for a value pooled from these studies. */
  BackTransform shown(List<D> pooled);

  /** What people read of one study alone, with an exact interval where the measure has one. */
  default Optional<ShownStudy> shownStudy(D study, double level) {
    return Optional.empty();
  }

  /**
   * The same measure with a spread lent to studies that report none; empty for a measure that has
   * none to lend.
   */
  default Optional<Measure<D>> withBorrowedSpread() {
    return Optional.empty();
  }

  /** Whether the numbers of the study were worked out from a median. */
  default boolean fromMedian(D study) {
    return false;
  }

  /** Whether a median of the study lies too far to one side for values near normal. */
  default boolean looksSkewed(D study) {
    return false;
  }

  /** Whether limits that a study reports lie about another middle than its effect. */
  default boolean limitsOffCentre(D study) {
    return false;
  }

  /** The test that the study's spread is worked out from. */
  default SpreadConversion.FromTest fromTest(D study) {
    return SpreadConversion.FromTest.NONE;
  }

  /**
   * A place in a row.
   *
   * @param name such as {@code intervention.events}
   * @param required whether no row can do without it
   */
  record Role(String name, boolean required) {}

  /**
   * One study as people read it.
   *
   * @param estimate as observed, nothing added
   * @param interval exact
   */
  record ShownStudy(double estimate, Interval interval) {}
}
