package gapwise.demonstration;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What a paper of two arms says about both at once. */
final class ComparisonRows {
  /** Quantile of the normal law for 95 % limits, as the invented authors would have used it. */
  private static final double NORMAL_LIMIT = 1.96;

  private ComparisonRows() {}

  static List<OutcomeReport> of(StudyPlan study, List<List<TrueLimb>> arms) {
    List<OutcomeReport> rows = new ArrayList<>();
    if (study.reports(Habit.ALL_ARMS_TOGETHER)) {
      rows.add(hospitalDays(arms));
    }
    if (study.reports(Habit.NO_DIFFERENCE)) {
      int total = arms.get(0).size() + arms.get(1).size();
      rows.add(noDifference("pain", OptionalInt.empty()));
      rows.add(noDifference("malalignment", OptionalInt.of(total)));
    }
    if (study.reports(Habit.EFFECT_ONLY)) {
      rows.add(oddsOfSatisfaction(arms.get(0), arms.get(1)));
      rows.add(adjustedDifference(arms.get(0), arms.get(1)));
    }
    return rows;
  }

  private static OutcomeReport hospitalDays(List<List<TrueLimb>> arms) {
    List<Double> days =
        arms.stream().flatMap(List::stream).map(l -> l.course().hospitalDays()).toList();
    return OutcomeReport.with(
            new Scope.AllArms(),
            Outcome.of("hospital-days"),
            new ReportedValue.Quantity(SummaryStyle.MEAN_AND_RANGE.print(Unit.DAYS, 0, days)))
        .note("one value for both arms")
        .build();
  }

  private static OutcomeReport noDifference(String outcome, OptionalInt total) {
    return OutcomeReport.with(
            new Scope.Comparison("A", "B"),
            Outcome.of(outcome),
            new ReportedValue.Statement("no difference between the groups (p > 0.05)", total))
        .build();
  }

  /** Odds ratio after adding a half to each cell, with limits by the method of Woolf (1955). */
  private static OutcomeReport oddsOfSatisfaction(List<TrueLimb> first, List<TrueLimb> second) {
    double a = 0.5 + first.stream().filter(l -> l.result().satisfied()).count();
    double b = first.size() + 1 - a;
    double c = 0.5 + second.stream().filter(l -> l.result().satisfied()).count();
    double d = second.size() + 1 - c;
    double log = StrictMath.log(a * d / (b * c));
    double error = Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d);
    return effect(
        "satisfied",
        new ReportedValue.Effect(
            "odds ratio",
            SummaryStyle.rounded(StrictMath.exp(log), 2),
            OptionalDouble.of(SummaryStyle.rounded(StrictMath.exp(log - NORMAL_LIMIT * error), 2)),
            OptionalDouble.of(SummaryStyle.rounded(StrictMath.exp(log + NORMAL_LIMIT * error), 2)),
            OptionalDouble.empty(),
            Optional.empty()));
  }

  private static OutcomeReport adjustedDifference(List<TrueLimb> first, List<TrueLimb> second) {
    double difference = meanLefs(first) - meanLefs(second);
    return effect(
        "sf36-physical",
        new ReportedValue.Effect(
            "mean difference",
            SummaryStyle.rounded(difference / 2, 1),
            OptionalDouble.of(SummaryStyle.rounded(difference / 2 - 4.1, 1)),
            OptionalDouble.of(SummaryStyle.rounded(difference / 2 + 4.1, 1)),
            OptionalDouble.empty(),
            Optional.of("age and length of the defect")));
  }

  private static double meanLefs(List<TrueLimb> limbs) {
    return limbs.stream().mapToInt(l -> l.result().lefs()).average().orElse(0);
  }

  private static OutcomeReport effect(String outcome, ReportedValue.Effect effect) {
    return OutcomeReport.with(new Scope.Comparison("A", "B"), Outcome.of(outcome), effect)
        .note("only this comparison is printed, not the arms")
        .build();
  }
}
