package gapwise.evidence;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Sums patients described one by one up to what a paper would report of their group. Patients of
 * whom an outcome is unknown are left out of its count, never taken as free of it.
 */
public final class PatientAggregation {
  private PatientAggregation() {}

  /**
   * The outcome of a list of patients: so many of so many for events, numbers in the unit of the
   * outcome for quantities, counts by category for grades. Empty when none of them has it.
   */
  public static Optional<ReportedValue> of(Outcome outcome, List<PatientRow> patients) {
    List<PatientOutcome> known =
        patients.stream()
            .flatMap(p -> Optional.ofNullable(p.outcomes().get(outcome.code())).stream())
            .toList();
    if (outcome.kind() == Outcome.Kind.CATEGORIES) {
      return grades(known);
    }
    return outcome.isEvent() ? events(known) : quantity(outcome, known);
  }

  private static Optional<ReportedValue> grades(List<PatientOutcome> known) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (PatientOutcome outcome : known) {
      if (outcome instanceof PatientOutcome.Graded graded) {
        counts.merge(graded.grade(), 1, Integer::sum);
      }
    }
    List<ReportedValue.Category> categories =
        counts.entrySet().stream()
            .map(entry -> new ReportedValue.Category(entry.getKey(), entry.getValue()))
            .toList();
    return categories.isEmpty()
        ? Optional.empty()
        : Optional.of(new ReportedValue.Categories(categories));
  }

  private static Optional<ReportedValue> events(List<PatientOutcome> known) {
    int events = 0;
    int total = 0;
    for (PatientOutcome outcome : known) {
      if (outcome instanceof PatientOutcome.Happened happened) {
        if (happened.answer() == YesOrNo.YES) {
          events++;
          total++;
        } else if (happened.answer() == YesOrNo.NO) {
          total++;
        }
      }
    }
    if (total == 0) {
      return Optional.empty();
    }
    return Optional.of(
        new ReportedValue.Events(
            new EventCount(
                OptionalInt.of(events), OptionalInt.of(total), OptionalDouble.empty(), false)));
  }

  private static Optional<ReportedValue> quantity(Outcome outcome, List<PatientOutcome> known) {
    Optional<Unit> unit = outcome.unit();
    if (unit.isEmpty()) {
      return Optional.empty();
    }
    List<Double> values =
        known.stream()
            .filter(PatientOutcome.Measured.class::isInstance)
            .map(PatientOutcome.Measured.class::cast)
            .filter(measured -> measured.unit().dimension() == unit.get().dimension())
            .map(measured -> measured.unit().to(unit.get(), measured.value()))
            .toList();
    return values.isEmpty()
        ? Optional.empty()
        : Optional.of(new ReportedValue.Quantity(QuantitySummary.of(unit.get(), values)));
  }
}
