package gapwise.demonstration;

import gapwise.evidence.EventCount;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CountedUnit;
import java.util.List;

/**
 * Outcomes that few papers report. Written last, so that a paper that has them reports everything
 * else as it would without.
 */
final class PublishedRows {
  private static final String MAJOR = "major: it needed another operation";

  private final ArmRows arm;

  private PublishedRows(ArmRows arm) {
    this.arm = arm;
  }

  static void write(ArmRows arm) {
    PublishedRows rows = new PublishedRows(arm);
    if (arm.reports(Habit.LENGTH_TRANSPORTED)) {
      rows.lengthTransported();
    }
    if (arm.reports(Habit.FIRST_STAGE_INFECTION)) {
      rows.firstStageInfection();
    }
    if (arm.reports(Habit.MAJOR_EVENTS)) {
      rows.majorEvents();
    }
    if (arm.reports(Habit.OTHER_CRITERIA)) {
      rows.otherCriteria();
    }
  }

  /** The segment goes as far as the gap is long, less what the limb was left shorter. */
  private void lengthTransported() {
    arm.add(
        arm.quantity(
                "length-transported",
                Unit.CENTIMETRES,
                1,
                arm.limbs,
                l ->
                    Math.max(
                        0.5,
                        l.start().defectCentimetres() - l.result().lengthDifferenceCentimetres()))
            .definition("measured on the radiograph when docking was reached"));
  }

  private void firstStageInfection() {
    int events =
        (int)
            arm.limbs.stream().filter(l -> arm.draw.chance(Truth.INFECTED_BETWEEN_STAGES)).count();
    arm.add(
        arm.row(
                "infection-after-first-stage",
                new ReportedValue.Events(EventCount.of(events, arm.limbs.size())))
            .counted(CountedUnit.LIMBS)
            .definition("debrided again before the graft was laid in")
            .provenance(arm.printed(events + "/" + arm.limbs.size())));
  }

  private void majorEvents() {
    List<TrueLimb> patients = arm.patients();
    arm.add(
        arm.events("major-adverse-event", patients, l -> l.course().unplannedOperations() > 0)
            .counted(CountedUnit.PATIENTS)
            .definition(MAJOR));
    arm.add(
        arm.quantity(
                "major-adverse-events",
                Unit.PER_PATIENT,
                1,
                patients,
                l -> l.course().unplannedOperations())
            .counted(CountedUnit.PATIENTS)
            .definition(MAJOR));
  }

  private void otherCriteria() {
    arm.add(
        arm.row("bone-result-other-criteria", LifeRows.categories(arm.limbs, LifeRows::boneGrade))
            .counted(CountedUnit.LIMBS)
            .definition(
                "criteria of the Quellmar limb panel (invented): joined, no infection, axis and"
                    + " length kept"));
  }
}
