package gapwise.demonstration;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Phase;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Times to union, in the frame, to weight on the leg, and the phases of treatment. */
final class TimeRows {
  /** Planned pace of transport, 1 mm a day, in centimetres a month. */
  private static final double CENTIMETRES_PER_MONTH = 3.044;

  /** Days before distraction begins. */
  private static final double LATENCY_MONTHS = 7 / 30.44;

  private final ArmRows arm;
  private final List<TrueLimb> joined;

  private TimeRows(ArmRows arm) {
    this.arm = arm;
    this.joined = arm.limbs.stream().filter(UnionRows::joined).toList();
  }

  static void write(ArmRows arm) {
    TimeRows times = new TimeRows(arm);
    if (!times.joined.isEmpty() && !arm.amputation() && !arm.method("other")) {
      times.union();
      times.frame();
    }
    if (!times.joined.isEmpty() && arm.reports(Habit.WEIGHT_BEARING)) {
      times.weightBearing();
    }
    if (!times.joined.isEmpty() && arm.reports(Habit.PHASES)) {
      times.phases();
    }
  }

  private Clock operationClock() {
    if (arm.arm.framed()) {
      return Clock.FRAME_ON;
    }
    boolean grafted = arm.method("induced-membrane") || arm.method("autograft");
    return grafted ? Clock.GRAFTING : Clock.DEFINITIVE_OPERATION;
  }

  private void union() {
    if (arm.reports(Habit.FROM_INJURY)) {
      arm.add(
          arm.time(
              "time-to-union",
              Clock.INJURY,
              joined,
              l -> l.course().unionMonths() + l.start().monthsFromInjury()));
    } else {
      arm.add(
          arm.time("time-to-union", operationClock(), joined, l -> l.course().unionMonths())
              .definition("mean among those that joined"));
    }
  }

  private void frame() {
    if (!arm.arm.framed()) {
      return;
    }
    arm.add(
        arm.time("external-fixation-time", Clock.FRAME_ON, joined, l -> l.course().frameMonths()));
    if (arm.method("frame-without-transport")) {
      return;
    }
    Unit unit = arm.reports(Habit.DAYS) ? Unit.DAYS_PER_CENTIMETRE : Unit.MONTHS_PER_CENTIMETRE;
    arm.add(
        arm.quantity(
            "external-fixation-index",
            unit,
            unit == Unit.DAYS_PER_CENTIMETRE ? 1 : 2,
            joined,
            l ->
                Unit.MONTHS_PER_CENTIMETRE.to(
                    unit, l.course().frameMonths() / l.start().defectCentimetres())));
  }

  private void weightBearing() {
    Clock clock = arm.amputation() ? Clock.DEFINITIVE_OPERATION : operationClock();
    String early =
        arm.study.number() % 4 == 0 ? "no-weight-bearing-time" : "time-to-partial-weight-bearing";
    arm.add(arm.time(early, clock, joined, l -> l.course().partialWeightMonths()));
    String full =
        arm.study.number() % 3 == 0
            ? "time-to-full-weight-bearing"
            : "time-to-full-weight-bearing-in-support";
    arm.add(arm.time(full, clock, joined, l -> l.course().fullInSupportMonths()));
    if (arm.arm.framed()) {
      arm.add(
          arm.time(
              "time-to-unsupported-weight-bearing",
              Clock.FRAME_REMOVAL,
              joined,
              l -> l.course().unsupportedMonths() - l.course().frameMonths()));
    } else {
      arm.add(
          arm.time(
              "time-to-unsupported-weight-bearing",
              clock,
              joined,
              l -> l.course().unsupportedMonths()));
    }
  }

  /** Phases that follow each other and add up to the whole treatment time. */
  private void phases() {
    if (arm.arm.framed()) {
      framedPhases();
      arm.add(
          arm.time(
              "total-treatment-time", Clock.FRAME_ON, joined, l -> l.course().unsupportedMonths()));
    } else {
      stagedPhases();
      arm.add(
          arm.time(
              "total-treatment-time",
              Clock.INJURY,
              joined,
              l -> beforeGrafting(l) + l.course().unsupportedMonths()));
    }
  }

  private void framedPhases() {
    if (arm.method("bone-transport")) {
      phase(Phase.LATENCY, l -> LATENCY_MONTHS);
      phase(Phase.DISTRACTION, TimeRows::distraction);
      phase(
          Phase.CONSOLIDATION,
          l -> Math.max(0.2, l.course().frameMonths() - LATENCY_MONTHS - distraction(l)));
    } else {
      phase(Phase.IN_FRAME, l -> l.course().frameMonths());
    }
    phase(
        arm.method("combined") ? Phase.UNSUPPORTED : Phase.FULL_IN_SUPPORT,
        l -> l.course().unsupportedMonths() - l.course().frameMonths());
  }

  private void stagedPhases() {
    phase(Phase.TEMPORARY_FRAME, TimeRows::temporaryFrame);
    phase(Phase.BETWEEN_STAGES, l -> beforeGrafting(l) - temporaryFrame(l));
    phase(Phase.NO_WEIGHT_BEARING, l -> l.course().partialWeightMonths());
    phase(
        Phase.PARTIAL_WEIGHT_BEARING,
        l -> Math.max(0.2, l.course().fullInSupportMonths() - l.course().partialWeightMonths()));
    phase(
        Phase.FULL_IN_SUPPORT,
        l -> l.course().unsupportedMonths() - l.course().fullInSupportMonths());
  }

  /** A temporary frame stands for about half as long as the wait between the stages. */
  private static double temporaryFrame(TrueLimb limb) {
    return Unit.WEEKS.to(Unit.MONTHS, limb.start().weeksBetweenStages() / 2);
  }

  private static double beforeGrafting(TrueLimb limb) {
    return temporaryFrame(limb) + Unit.WEEKS.to(Unit.MONTHS, limb.start().weeksBetweenStages());
  }

  private static double distraction(TrueLimb limb) {
    return limb.start().defectCentimetres() / CENTIMETRES_PER_MONTH;
  }

  private void phase(Phase phase, ToDoubleFunction<TrueLimb> months) {
    List<TrueLimb> passed = joined.stream().filter(limb -> months.applyAsDouble(limb) > 0).toList();
    if (!passed.isEmpty()) {
      Unit unit = phase == Phase.LATENCY ? Unit.DAYS : arm.timeUnit();
      arm.add(
          arm.quantity(
                  "treatment-phase",
                  unit,
                  unit == Unit.MONTHS ? 1 : 0,
                  passed,
                  limb -> Unit.MONTHS.to(unit, months.applyAsDouble(limb)))
              .phase(phase));
    }
  }
}
