package gapwise.evidence;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How long the patients of an arm were followed.
 *
 * @param months as reported or as summed up, in months
 */
public record ArmFollowUp(QuantitySummary months) {
  public ArmFollowUp {
    Objects.requireNonNull(months, "months");
    if (months.unit() != Unit.MONTHS) {
      throw new IllegalArgumentException("follow-up must be in months, was in " + months.unit());
    }
  }

  /**
   * The follow-up of an arm: as reported for it; else summed up from its patients; else as reported
   * for all arms together. What is given in a unit that is no time says nothing.
   */
  public static Optional<ArmFollowUp> of(Study study, Arm arm) {
    return reported(arm.baseline())
        .or(() -> ofPatients(study.patientsOf(arm.id())))
        .or(() -> reported(study.whole()));
  }

  private static Optional<ArmFollowUp> reported(Baseline baseline) {
    return baseline
        .followUp()
        .filter(summary -> summary.unit().dimension() == Unit.Dimension.TIME)
        .map(summary -> new ArmFollowUp(summary.in(Unit.MONTHS)));
  }

  private static Optional<ArmFollowUp> ofPatients(List<PatientRow> patients) {
    List<Double> months =
        patients.stream()
            .flatMap(patient -> patient.followUp().stream())
            .map(Duration::months)
            .toList();
    return months.isEmpty()
        ? Optional.empty()
        : Optional.of(new ArmFollowUp(QuantitySummary.of(Unit.MONTHS, months)));
  }

  /** Mean or median in months. */
  public OptionalDouble centreMonths() {
    return months.centre();
  }

  /**
   * Whether patients were followed for so many months on average; empty where no average is given
   * and the shortest follow-up is shorter, which leaves it open.
   */
  public Optional<Boolean> reaches(double least) {
    if (months.centre().isPresent()) {
      return Optional.of(months.centre().getAsDouble() >= least);
    }
    boolean all = months.minimum().isPresent() && months.minimum().getAsDouble() >= least;
    return all ? Optional.of(true) : Optional.empty();
  }

  /**
   * The months for which patients were followed at least on average: the mean or median, else the
   * shortest follow-up, below which no average can lie.
   */
  public OptionalDouble leastMonths() {
    return months.centre().isPresent() ? months.centre() : months.minimum();
  }
}
