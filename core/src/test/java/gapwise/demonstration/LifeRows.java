package gapwise.demonstration;

import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Money;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CountedUnit;
import java.util.Currency;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** Grades, scores, satisfaction, work, hospital and cost. */
final class LifeRows {
  /** ISO 4217 keeps this code for testing; it is no country's money. */
  private static final Currency TEST_CURRENCY = Currency.getInstance("XTS");

  private static final List<String> GRADES = List.of("excellent", "good", "fair", "poor");

  private final ArmRows arm;

  private LifeRows(ArmRows arm) {
    this.arm = arm;
  }

  static void write(ArmRows arm) {
    LifeRows life = new LifeRows(arm);
    if (arm.reports(Habit.GRADES)) {
      life.grades();
    }
    if (arm.reports(Habit.SCORES)) {
      life.scores();
    }
    if (arm.reports(Habit.SATISFACTION)) {
      life.patientsWho("satisfied", l -> l.result().satisfied());
      life.patientsWho(
          "would-choose-again", l -> l.result().satisfied() && !l.result().amputated());
    }
    if (arm.reports(Habit.LIVING)) {
      life.living();
    }
    if (arm.reports(Habit.COST) || arm.reports(Habit.COST_WITHOUT_YEAR)) {
      life.cost();
    }
  }

  private void grades() {
    arm.add(
        arm.row("bone-result", categories(arm.limbs, LifeRows::boneGrade))
            .counted(CountedUnit.LIMBS)
            .definition(
                "joined, no infection, deformity below 7 degrees, difference below 2.5 cm"));
    arm.add(
        arm.row("functional-result", categories(arm.limbs, LifeRows::functionGrade))
            .counted(CountedUnit.LIMBS));
  }

  /** A limb that joined loses a grade for each fault; one that did not is poor. */
  static String boneGrade(TrueLimb limb) {
    TrueLimb.Result result = limb.result();
    int faults =
        (limb.infectedInFollowUp() ? 1 : 0)
            + (result.malaligned() ? 1 : 0)
            + (result.lengthDifferenceCentimetres() > 2.5 ? 1 : 0);
    return GRADES.get(UnionRows.joined(limb) ? Math.min(2, faults) : 3);
  }

  private static String functionGrade(TrueLimb limb) {
    int points = limb.result().lefs();
    return GRADES.get(points >= 62 ? 0 : points >= 50 ? 1 : points >= 35 ? 2 : 3);
  }

  /** How many limbs have each grade. */
  static ReportedValue.Categories categories(
      List<TrueLimb> limbs, Function<TrueLimb, String> grade) {
    return new ReportedValue.Categories(
        GRADES.stream()
            .map(
                name ->
                    new ReportedValue.Category(
                        name,
                        (int) limbs.stream().filter(l -> grade.apply(l).equals(name)).count()))
            .toList());
  }

  private void scores() {
    if (arm.study.number() % 2 == 0) {
      arm.add(score("lefs", l -> l.result().lefs()).timePoint(ArmRows.at(24)));
      arm.add(score("lefs", l -> Math.max(0, l.result().lefs() - 8)).timePoint(ArmRows.at(12)));
    } else {
      arm.add(score("lefs", l -> l.result().lefs()));
      arm.add(score("sf36-physical", l -> l.result().sf36Physical()).timePoint(ArmRows.at(24)));
    }
    arm.add(score("pain", l -> l.result().pain()));
  }

  private OutcomeReport.Builder score(String outcome, ToDoubleFunction<TrueLimb> points) {
    return arm.quantity(outcome, Unit.POINTS, 1, arm.patients(), points)
        .counted(CountedUnit.PATIENTS);
  }

  private void patientsWho(String outcome, Predicate<TrueLimb> happened) {
    arm.add(arm.events(outcome, arm.patients(), happened).counted(CountedUnit.PATIENTS));
  }

  /** Work counts only those who worked before: here the younger than 60. */
  private void living() {
    List<TrueLimb> workers =
        arm.patients().stream().filter(l -> l.person().ageYears() < 60).toList();
    if (!workers.isEmpty()) {
      int back = (int) workers.stream().filter(l -> l.result().backAtWork()).count();
      arm.add(
          arm.row("return-to-work", new ReportedValue.Events(EventCount.of(back, workers.size())))
              .counted(CountedUnit.PATIENTS)
              .definition("of those who worked before the injury"));
    }
    arm.add(
        arm.quantity(
            "hospital-days", Unit.DAYS, 0, arm.patients(), l -> l.course().hospitalDays()));
    if (!arm.amputation()) {
      arm.add(
          arm.quantity(
              "limb-length-discrepancy",
              Unit.CENTIMETRES,
              1,
              arm.limbs,
              l -> l.result().lengthDifferenceCentimetres()));
    }
  }

  private void cost() {
    boolean withYear = arm.reports(Habit.COST);
    OptionalInt year = withYear ? OptionalInt.of(arm.study.to()) : OptionalInt.empty();
    arm.add(
        arm.quantity("cost", Unit.CURRENCY, 0, arm.patients(), l -> l.course().cost())
            .money(new Money(TEST_CURRENCY, year))
            .note(
                "in " + Scenario.CURRENCY + ", kept under the code that is reserved for testing"));
  }
}
