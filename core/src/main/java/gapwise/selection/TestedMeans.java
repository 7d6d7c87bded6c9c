package gapwise.selection;

import gapwise.evidence.Arm;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.TestOfMeans;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Standing;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * The mean of a row and the mean of another arm of its study that a t test compares, of the same
 * outcome at the same time on the same clock.
 *
 * @param difference of the means in a unit, not 0
 * @param patients of the row
 * @param others of the other arm
 * @param test with its printed numbers
 */
public record TestedMeans(double difference, int patients, int others, TestOfMeans test) {

  /** The first such test of the study that is about a row; empty for most. */
  public static Optional<TestedMeans> of(SelectedRow row, Unit unit) {
    if (row.report().filter(own -> own.scope() instanceof Scope.OneArm).isEmpty()
        || row.isOfPart()) {
      return Optional.empty();
    }
    OutcomeReport own = row.report().get();
    return row.study().outcomes().stream()
        .filter(other -> isComparable(own, other))
        .flatMap(other -> between(row, own, other, unit).stream())
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
      SelectedRow row, OutcomeReport own, OutcomeReport other, Unit unit) {
    Optional<TestOfMeans> test =
        Stream.concat(
                own.tested().filter(one -> other.scope().armIds().contains(one.against())).stream(),
                other.tested().filter(one -> row.arm().id().equals(one.against())).stream())
            .findFirst();
    OptionalInt patients = row.speaksOf();
    OptionalInt others = patients(row, other);
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

  private static OptionalInt patients(SelectedRow row, OutcomeReport other) {
    if (other.value() instanceof ReportedValue.Quantity quantity
        && quantity.summary().n().isPresent()) {
      return quantity.summary().n();
    }
    if (other.followed().isPresent()) {
      return other.followed();
    }
    return row.study()
        .arm(other.scope().armIds().get(0))
        .map(Arm::baseline)
        .map(baseline -> baseline.patients())
        .orElse(OptionalInt.empty());
  }
}
