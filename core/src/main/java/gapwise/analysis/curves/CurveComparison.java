package gapwise.analysis.curves;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.survival.HazardRatio;
import gapwise.synthesis.survival.LogRank;
import gapwise.synthesis.survival.PatientTimes;
import gapwise.synthesis.survival.RestrictedMean;
import gapwise.synthesis.survival.TwoGroups;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One group of patients set against another, within studies where the rows tell them apart. */
final class CurveComparison {
  private final SurvivalQuestions questions;
  private final List<CurveGroup> groups;
  private final List<Result.Warning> warnings;

  CurveComparison(
      SurvivalQuestions questions, List<CurveGroup> groups, List<Result.Warning> warnings) {
    this.questions = questions;
    this.groups = groups;
    this.warnings = warnings;
  }

  ComparisonResult of(SurvivalQuestions.Compare asked) {
    List<CurveGroup> own = new ArrayList<>();
    List<CurveGroup> others = new ArrayList<>();
    Map<Optional<String>, CurveGroup> against = new HashMap<>();
    groups.stream()
        .filter(group -> group.group().equals(Optional.of(asked.against())))
        .forEach(group -> against.put(group.study(), group));
    for (CurveGroup group : groups) {
      if (group.group().equals(Optional.of(asked.group())) && against.containsKey(group.study())) {
        own.add(group);
        others.add(against.get(group.study()));
      }
    }
    TwoGroups two = TwoGroups.of(times(own), times(others));
    Optional<LogRank> test = two.logRank();
    if (test.isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "no-information",
              say(
                  "analysis.never-at-risk-together",
                  Map.of("group", asked.group(), "against", asked.against()))));
    }
    boolean byStudy = groups.stream().anyMatch(group -> group.study().isPresent());
    return whole(
        asked,
        byStudy ? OptionalInt.of(own.size()) : OptionalInt.empty(),
        two.hazardRatio(),
        test.map(t -> new ComparisonResult.LogRank(t.chiSquared(), 1, t.pValue())),
        own.size() == 1 ? difference(own.get(0), others.get(0)) : Optional.empty());
  }

  private static List<PatientTimes> times(List<CurveGroup> groups) {
    return groups.stream().map(CurveGroup::times).toList();
  }

  private ComparisonResult whole(
      SurvivalQuestions.Compare asked,
      OptionalInt strata,
      HazardRatio ratio,
      Optional<ComparisonResult.LogRank> test,
      Optional<ComparisonResult.Difference> difference) {
    OptionalDouble none = OptionalDouble.empty();
    if (ratio instanceof HazardRatio.NotEstimable not) {
      warnings.add(Result.Warning.of(not.reason().code(), not.reason().message()));
      return new ComparisonResult(
          asked.group(),
          asked.against(),
          strata,
          none,
          none,
          none,
          none,
          Optional.empty(),
          test,
          difference);
    }
    HazardRatio.Estimated estimated = (HazardRatio.Estimated) ratio;
    double log = estimated.logEstimate();
    double half = multiplier() * estimated.standardError();
    return new ComparisonResult(
        asked.group(),
        asked.against(),
        strata,
        OptionalDouble.of(log),
        OptionalDouble.of(estimated.standardError()),
        OptionalDouble.of(log - half),
        OptionalDouble.of(log + half),
        Optional.of(new Result.Estimate(Math.exp(log), Math.exp(log - half), Math.exp(log + half))),
        test,
        difference);
  }

  private Optional<ComparisonResult.Difference> difference(CurveGroup own, CurveGroup other) {
    if (questions.horizon().isEmpty()) {
      return Optional.empty();
    }
    double horizon = questions.horizon().getAsDouble();
    Optional<RestrictedMean> a = own.curve().restrictedMean(horizon);
    Optional<RestrictedMean> b = other.curve().restrictedMean(horizon);
    if (a.isEmpty() || b.isEmpty()) {
      return Optional.empty();
    }
    double estimate = a.get().estimate() - b.get().estimate();
    double error = Math.hypot(a.get().standardError(), b.get().standardError());
    double half = multiplier() * error;
    WithoutWidth.ofDifference(own, a.get(), other, b.get()).ifPresent(warnings::add);
    return Optional.of(
        new ComparisonResult.Difference(estimate, error, estimate - half, estimate + half));
  }

  private double multiplier() {
    return ReferenceDistribution.normal().multiplier(questions.level());
  }
}
