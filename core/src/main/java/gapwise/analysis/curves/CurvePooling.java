package gapwise.analysis.curves;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.Summaries;
import gapwise.analysis.result.Result;
import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.survival.PatientTimes;
import gapwise.synthesis.survival.PooledCurve;
import gapwise.synthesis.survival.RestrictedMean;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** Pools the curves of several studies, each group apart where rows tell both apart. */
final class CurvePooling {
  private final SurvivalQuestions questions;
  private final List<CurveGroup> groups;
  private final List<Result.Warning> warnings;

  CurvePooling(
      SurvivalQuestions questions, List<CurveGroup> groups, List<Result.Warning> warnings) {
    this.questions = questions;
    this.groups = groups;
    this.warnings = warnings;
  }

  List<PooledCurveResult> of(SurvivalQuestions.Pool asked) {
    boolean byStudy = groups.stream().anyMatch(group -> group.study().isPresent());
    if (!byStudy) {
      return List.of(
          pool(
              Optional.empty(),
              groups.stream()
                  .filter(
                      group ->
                          asked.groups().isEmpty()
                              || asked.groups().contains(group.group().orElse("")))
                  .toList(),
              asked));
    }
    Map<Optional<String>, List<CurveGroup>> byName = new LinkedHashMap<>();
    groups.forEach(
        group -> byName.computeIfAbsent(group.group(), name -> new ArrayList<>()).add(group));
    List<PooledCurveResult> pooled = new ArrayList<>();
    byName.forEach((name, curves) -> pooled.add(pool(name, curves, asked)));
    return pooled;
  }

  private PooledCurveResult pool(
      Optional<String> name, List<CurveGroup> curves, SurvivalQuestions.Pool asked) {
    Work.check();
    List<PatientTimes> studies = curves.stream().map(CurveGroup::times).toList();
    String told =
        name.map(group -> say("analysis.pooled-curve-of", Map.of("group", group)))
            .orElseGet(() -> say("analysis.pooled-curve"));
    List<Double> times = asked.times().isEmpty() ? PooledCurve.times(studies) : asked.times();
    Optional<PooledCurve> curve =
        studies.size() < 2 ? Optional.empty() : PooledCurve.of(studies, times, questions.level());
    if (studies.size() < 2) {
      warn("single-study", say("analysis.pooled-curve-alone", Map.of("curve", told)));
    } else if (curve.isEmpty()) {
      warn("too-few-studies", say("analysis.pooled-curve-without-events", Map.of("curve", told)));
    } else if (curve.get().points().size() < times.size()) {
      warn("follow-up-too-short", say("analysis.pooled-curve-ends", Map.of("curve", told)));
    }
    OptionalDouble lower = curve.map(PooledCurve::medianLower).orElse(OptionalDouble.empty());
    OptionalDouble upper = curve.map(PooledCurve::medianUpper).orElse(OptionalDouble.empty());
    WithoutWidth.ofMedian(told, lower, upper).ifPresent(warnings::add);
    return new PooledCurveResult(
        name,
        studies.size(),
        studies.stream().mapToInt(PatientTimes::size).sum(),
        curve.map(c -> c.points().stream().map(CurvePooling::at).toList()).orElse(List.of()),
        curve.map(PooledCurve::median).orElse(OptionalDouble.empty()),
        lower,
        upper,
        questions.horizon().isPresent()
            ? Optional.of(mean(told, curves, questions.horizon().getAsDouble()))
            : Optional.empty());
  }

  private static PooledCurveResult.At at(PooledCurve.Point point) {
    return new PooledCurveResult.At(
        point.time(),
        point.studies(),
        point.atRisk(),
        point.survival(),
        point.standardErrorOfLog(),
        limit(point.limits(), Interval::lower),
        limit(point.limits(), Interval::upper),
        limit(point.prediction(), Interval::lower),
        limit(point.prediction(), Interval::upper));
  }

  private static OptionalDouble limit(Optional<Interval> limits, ToDoubleFunction<Interval> which) {
    return limits.isPresent()
        ? OptionalDouble.of(which.applyAsDouble(limits.get()))
        : OptionalDouble.empty();
  }

  private PooledCurveResult.Mean mean(String told, List<CurveGroup> curves, double horizon) {
    List<Double> means = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (CurveGroup curve : curves) {
      Optional<RestrictedMean> mean = curve.curve().restrictedMean(horizon);
      if (mean.isEmpty()) {
        warnings.add(
            Result.Warning.of(
                "study-left-out",
                say("analysis.mean-left-out", Map.of("curve", told, "study", curve.name())),
                curve.name()));
      } else {
        means.add(mean.get().estimate());
        variances.add(mean.get().standardError() * mean.get().standardError());
      }
    }
    Pooled pooled = InverseVariance.pool(EffectSample.of(means, variances), settings());
    pooled
        .warnings()
        .forEach(
            one ->
                warn(
                    one.code(),
                    say(
                        "analysis.of-restricted-mean",
                        Map.of("curve", told, "warning", one.message()))));
    return new PooledCurveResult.Mean(
        horizon,
        means.size(),
        Summaries.summary(pooled, BackTransform.of(mean -> Math.max(0, Math.min(horizon, mean)))),
        Summaries.heterogeneity(pooled.heterogeneity()));
  }

  /** The usual ones of a synthesis with random effects. */
  private PoolingSettings settings() {
    return new PoolingSettings(
        TauSquaredEstimators.named("restricted-maximum-likelihood"),
        MeanIntervals.usual(),
        new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        questions.level());
  }

  private void warn(String code, String message) {
    warnings.add(Result.Warning.of(code, message));
  }
}
