package gapwise.demonstration;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CountedUnit;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** Infection, broken bones, further operations and what else went wrong. */
final class HarmRows {
  private static final Set<String> TAKES_BONE =
      Set.of("autograft", "induced-membrane", "vascularised-bone-flap", "combined");
  private static final Set<String> CAN_BREAK = Set.of("printed-scaffold", "allograft", "other");

  private final ArmRows arm;

  private HarmRows(ArmRows arm) {
    this.arm = arm;
  }

  static void write(ArmRows arm) {
    HarmRows harms = new HarmRows(arm);
    harms.infection();
    harms.mechanical();
    harms.furtherOperations();
  }

  private void infection() {
    List<TrueLimb> infected = arm.limbs.stream().filter(l -> l.start().infected()).toList();
    List<TrueLimb> clean = arm.limbs.stream().filter(l -> !l.start().infected()).toList();
    if (arm.reports(Habit.BY_INFECTION) || infected.isEmpty() || clean.isEmpty()) {
      infection("infection-recurrence", infected);
      infection("deep-infection", clean);
    } else {
      infection("postoperative-deep-infection", arm.limbs);
    }
    if (!infected.isEmpty() && arm.draw.chance(0.25)) {
      arm.add(arm.events("infection-eradication", infected, l -> !l.infectedInFollowUp()));
    }
  }

  private void infection(String outcome, List<TrueLimb> of) {
    if (of.isEmpty()) {
      return;
    }
    String definition = Scenario.INFECTION_DEFINITIONS.get(of.size() % 3);
    if (!arm.reports(Habit.TWO_TIME_POINTS)) {
      arm.add(arm.events(outcome, of, TrueLimb::infectedInFollowUp).definition(definition));
      return;
    }
    for (int months : List.of(12, 24)) {
      List<TrueLimb> seen =
          of.stream()
              .filter(l -> l.course().followUpMonths() >= months || l.infectedWithin(months))
              .toList();
      if (!seen.isEmpty()) {
        arm.add(
            arm.events(outcome, seen, l -> l.infectedWithin(months))
                .definition(definition)
                .timePoint(ArmRows.at(months))
                .followed(seen.size()));
      }
    }
  }

  private void mechanical() {
    sometimes(!arm.amputation(), 0.55, "refracture", l -> l.result().refracture());
    sometimes(
        TAKES_BONE.contains(arm.arm.method()),
        0.6,
        "donor-site-morbidity",
        l -> l.result().donorTrouble());
    sometimes(arm.method("vascularised-bone-flap"), 0.8, "flap-loss", l -> l.result().flapLost());
    sometimes(
        CAN_BREAK.contains(arm.arm.method()),
        0.8,
        "implant-failure",
        l -> l.result().implantFailed());
    sometimes(
        arm.method("bone-transport"), 0.45, "docking-procedure", l -> !l.course().primaryUnion());
    sometimes(!arm.amputation(), 0.25, "malalignment", l -> l.result().malaligned());
    if (arm.arm.framed() && arm.reports(Habit.PIN_SITE_RATE)) {
      pinSiteRate();
    } else {
      sometimes(arm.arm.framed(), 0.5, "pin-site-infection", l -> l.result().pinSiteInfection());
    }
  }

  /** Episodes at pin sites over all months in the frame: a rate, never a share of patients. */
  private void pinSiteRate() {
    double months = arm.limbs.stream().mapToDouble(l -> l.course().frameMonths()).sum();
    int episodes = (int) Math.round(months * 0.07);
    arm.add(
        arm.row(
                "complications",
                new ReportedValue.Rate(episodes, SummaryStyle.rounded(months, 0), Unit.MONTHS))
            .definition("episodes of infection at pin sites over months in the frame"));
  }

  private void furtherOperations() {
    sometimes(true, 0.5, "unplanned-reoperation", l -> l.course().unplannedOperations() > 0);
    sometimes(!arm.amputation(), 0.6, "secondary-amputation", l -> l.result().amputated());
    if (arm.amputation()) {
      arm.add(
          arm.events("death", arm.patients(), l -> l.result().died())
              .counted(CountedUnit.PATIENTS));
    }
    if (arm.reports(Habit.COUNTS_PER_PATIENT)) {
      perPatient("unplanned-operations", l -> l.course().unplannedOperations());
      perPatient(
          "total-operations",
          l -> l.course().unplannedOperations() + l.course().plannedOperations());
      complications();
    } else if (arm.draw.chance(0.3)) {
      arm.add(
          arm.events("any-complication", arm.patients(), l -> l.course().complications() > 0)
              .counted(CountedUnit.PATIENTS));
    }
  }

  /** Half of the papers print events among patients, where one patient may have several. */
  private void complications() {
    if (arm.study.number() % 2 == 0) {
      perPatient("complications", l -> l.course().complications());
      return;
    }
    int events = arm.patients().stream().mapToInt(l -> l.course().complications()).sum();
    int among = arm.patients().size();
    arm.add(
        arm.row("complications", new ReportedValue.Tally(events, OptionalInt.of(among)))
            .counted(CountedUnit.PATIENTS)
            .provenance(arm.printed(events + " complications in " + among + " patients")));
  }

  private void perPatient(String outcome, ToDoubleFunction<TrueLimb> count) {
    arm.add(
        arm.quantity(outcome, Unit.PER_PATIENT, 1, arm.patients(), count)
            .counted(CountedUnit.PATIENTS));
  }

  private void sometimes(
      boolean applies, double probability, String outcome, Predicate<TrueLimb> happened) {
    boolean drawn = arm.draw.chance(probability);
    if (applies && drawn) {
      arm.add(arm.events(outcome, arm.limbs, happened));
    }
  }
}
