package gapwise.demonstration;

import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Subgroup;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Standing;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Predicate;

/** How many limbs joined, at first and in the end, and in which parts of an arm. */
final class UnionRows {
  private static final Predicate<TrueLimb> AT_FIRST = limb -> limb.course().primaryUnion();
  private static final Predicate<TrueLimb> IN_THE_END = UnionRows::joined;

  private final ArmRows arm;

  private UnionRows(ArmRows arm) {
    this.arm = arm;
  }

  /** A limb that was removed has not joined in the end. */
  static boolean joined(TrueLimb limb) {
    return limb.course().finalUnion() && !limb.result().amputated();
  }

  static void write(ArmRows arm) {
    if (!arm.amputation() && !arm.method("other")) {
      new UnionRows(arm).write();
    }
  }

  private void write() {
    if (arm.reports(Habit.PRIMARY_AND_FINAL) || arm.reports(Habit.PRIMARY_ONLY)) {
      total("primary-union", AT_FIRST);
      parts("primary-union", AT_FIRST);
    }
    if (arm.reports(Habit.PRIMARY_AND_FINAL)) {
      arm.add(
          arm.events("final-union", arm.limbs, IN_THE_END)
              .definition("after all further operations"));
    } else if (arm.reports(Habit.NO_FURTHER_GRAFT)) {
      total("union-without-further-grafting", AT_FIRST);
    } else if (arm.reports(Habit.NONUNION)) {
      arm.add(
          arm.events("nonunion", arm.limbs, IN_THE_END.negate())
              .definition("no bridging at the last visit, or removed"));
    } else if (!arm.reports(Habit.PRIMARY_ONLY)) {
      total("union", IN_THE_END);
      parts("union", IN_THE_END);
    }
  }

  private void total(String outcome, Predicate<TrueLimb> happened) {
    OutcomeReport.Builder row = arm.events(outcome, arm.limbs, happened);
    int of = arm.limbs.size();
    int events = (int) arm.limbs.stream().filter(happened).count();
    double percent = SummaryStyle.rounded(100.0 * events / of, 1);
    if (arm.reports(Habit.CONTRADICTING_PERCENT)) {
      double wrong = SummaryStyle.rounded(Math.max(0, percent - 4.5), 1);
      row = counts(outcome, OptionalInt.of(events), OptionalInt.of(of), wrong, false);
      row.note("the paper prints " + wrong + " % beside " + events + " of " + of);
    } else if (arm.reports(Habit.PERCENT_ONLY) && arm.reports(Habit.COST)) {
      row = counts(outcome, OptionalInt.of(events), OptionalInt.of(of), percent, true);
      row.note("events counted back from the percentage");
    } else if (arm.reports(Habit.PERCENT_ONLY)) {
      row = counts(outcome, OptionalInt.empty(), OptionalInt.empty(), percent, false);
    } else if (arm.draw.chance(0.3)) {
      row = counts(outcome, OptionalInt.of(events), OptionalInt.of(of), percent, false);
    }
    arm.add(row.definition(Scenario.unionDefinition(of, Method.of(arm.arm.method()).frame())));
    if (arm.reports(Habit.TWO_REPORTS_OF_UNION)) {
      int other = events == of ? events - 1 : events + 1;
      arm.add(
          counts(outcome, OptionalInt.of(other), OptionalInt.of(of), 100.0 * other / of, false)
              .standing(Standing.ALTERNATIVE)
              .note("abstract; the table counts otherwise"));
    }
  }

  private OutcomeReport.Builder counts(
      String outcome, OptionalInt events, OptionalInt of, double percent, boolean countedBack) {
    double printed = SummaryStyle.rounded(percent, 1);
    return arm.row(
            outcome,
            new ReportedValue.Events(
                new EventCount(events, of, OptionalDouble.of(printed), countedBack)))
        .counted(CountedUnit.LIMBS)
        .provenance(arm.printed(printed + " %"));
  }

  private void parts(String outcome, Predicate<TrueLimb> happened) {
    if (arm.reports(Habit.BANDS_OF_LENGTH)) {
      part(
          outcome,
          happened,
          limb -> limb.start().defectCentimetres() <= 6,
          new Subgroup("up to 6 cm", OptionalDouble.empty(), OptionalDouble.of(6)));
      part(
          outcome,
          happened,
          limb -> limb.start().defectCentimetres() > 6,
          new Subgroup("over 6 cm", OptionalDouble.of(6), OptionalDouble.empty()));
    }
    if (arm.reports(Habit.BY_INFECTION)) {
      part(outcome, happened, limb -> limb.start().infected(), words("infected at the start"));
      part(outcome, happened, limb -> !limb.start().infected(), words("not infected"));
    }
  }

  static Subgroup words(String words) {
    return new Subgroup(words, OptionalDouble.empty(), OptionalDouble.empty());
  }

  private void part(
      String outcome,
      Predicate<TrueLimb> happened,
      Predicate<TrueLimb> belongs,
      Subgroup subgroup) {
    List<TrueLimb> limbs = arm.limbs.stream().filter(belongs).toList();
    if (!limbs.isEmpty()) {
      arm.add(arm.events(outcome, limbs, happened).subgroup(subgroup));
    }
  }
}
