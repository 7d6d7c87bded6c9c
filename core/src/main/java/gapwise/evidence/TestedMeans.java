package gapwise.evidence;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Standing;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * The mean of an arm and the mean of another arm of its study that a t test compares, of the same
 * outcome at the same time on the same clock.
 *
 * @param difference of the means in a unit, not 0
 * @param patients of the arm
 * @param others of the other arm
 * @param test with its printed numbers
 */
public record TestedMeans(double difference, int patients, int others, TestOfMeans test) {

  /**
   * The first such test of a study that is about a report; empty for most.
   *
   * @param own of one whole arm
   * @param patients of whom it tells, where that is known
   */
  public static Optional<TestedMeans> of(
      Study study, OutcomeReport own, OptionalInt patients, Unit unit) {
    if (!(own.scope() instanceof Scope.OneArm) || own.subgroup().isPresent()) {
      return Optional.empty();
    }
    return study.outcomes().stream()
        .filter(other -> isComparable(own, other))
        .flatMap(other -> between(study, own, patients, other, unit).stream())
        .findFirst();
  }

  private static boolean isComparable(OutcomeReport own, OutcomeReport other) {
    return other.scope() instanceof Scope.OneArm
        && !other.scope().equals(own.scope())
        && other.standing() == Standing.COUNTS
        && other.outcome().equals(own.outcome())
        && other.clock().equals(own.clock())
        && other.timePoint().equals(own.timePoint())
        && other.subgroup().isEmpty()
        && other.phase().equals(own.phase());
  }

  private static Optional<TestedMeans> between(
      Study study, OutcomeReport own, OptionalInt patients, OutcomeReport other, Unit unit) {
    Optional<TestOfMeans> test =
        Stream.concat(
                own.tested().filter(one -> other.scope().armIds().contains(one.against())).stream(),
                other.tested().filter(one -> own.scope().armIds().contains(one.against())).stream())
            .findFirst();
    OptionalInt others = patients(study, other);
    if (test.isEmpty()
        || patients.isEmpty()
        || others.isEmpty()
        || !(own.value() instanceof ReportedValue.Quantity first)
        || !(other.value() instanceof ReportedValue.Quantity second)
        || second.summary().unit().dimension() != unit.dimension()) {
      return Optional.empty();
    }
    QuantitySummary here = first.summary().in(unit);
    QuantitySummary there = second.summary().in(unit);
    if (here.mean().isEmpty() || there.mean().isEmpty()) {
      return Optional.empty();
    }
    double difference = here.mean().getAsDouble() - there.mean().getAsDouble();
    return difference == 0
        ? Optional.empty()
        : Optional.of(
            new TestedMeans(difference, patients.getAsInt(), others.getAsInt(), test.get()));
  }

  private static OptionalInt patients(Study study, OutcomeReport other) {
    if (other.value() instanceof ReportedValue.Quantity quantity
        && quantity.summary().n().isPresent()) {
      return quantity.summary().n();
    }
    if (other.followed().isPresent()) {
      return other.followed();
    }
    return study
        .arm(other.scope().armIds().get(0))
        .map(Arm::baseline)
        .map(baseline -> baseline.patients())
        .orElse(OptionalInt.empty());
  }
}
