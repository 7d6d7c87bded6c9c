package gapwise.analysis.curves;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.synthesis.survival.KaplanMeier;
import gapwise.synthesis.survival.PatientTime;
import gapwise.synthesis.survival.RestrictedMean;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** What is told of survival curves, whichever way their patients' times came. */
final class SurvivalAnswer {
  private final SurvivalQuestions questions;
  private final List<CurveGroup> groups;
  private final List<Result.Warning> warnings;

  SurvivalAnswer(
      SurvivalQuestions questions, List<CurveGroup> groups, List<Result.Warning> warnings) {
    this.questions = questions;
    this.groups = List.copyOf(groups);
    this.warnings = warnings;
  }

  Result result(PlanHead head, DataTable table) {
    refuseTooMany("survivalAt", questions.survivalAt().size());
    refuseTooMany("pooledCurve", questions.pooled().map(asked -> asked.times().size()).orElse(0));
    List<CurveResult> curves = new ArrayList<>();
    groups.forEach(group -> curves.add(curve(group)));
    long studies = groups.stream().map(CurveGroup::study).distinct().count();
    Result.Data data =
        new Result.Data(
            (int) studies,
            groups.size(),
            OptionalDouble.of(groups.stream().mapToInt(g -> g.times().size()).sum()),
            OptionalDouble.of(groups.stream().mapToInt(g -> g.times().events()).sum()),
            table.sha256());
    Optional<ComparisonResult> comparison =
        questions.compare().map(new CurveComparison(questions, groups, warnings)::of);
    Optional<List<PooledCurveResult>> pooled =
        questions.pooled().map(new CurvePooling(questions, groups, warnings)::of);
    WithoutWidth.openAbove(openAbove(curves, pooled.orElse(List.of()))).ifPresent(warnings::add);
    WithoutWidth.leftOut(atALimit(curves, pooled.orElse(List.of()))).ifPresent(warnings::add);
    return new Result(head.json(), data, new CurvesResult(curves, comparison, pooled), warnings);
  }

  private static int openAbove(List<CurveResult> curves, List<PooledCurveResult> pooled) {
    return (int)
        (curves.stream()
                .filter(one -> one.median().isPresent() && one.medianUpper().isEmpty())
                .count()
            + pooled.stream()
                .filter(one -> one.median().isPresent() && one.medianUpper().isEmpty())
                .count());
  }

  /** Places of curves where nobody or everybody had the event, so that no limits are told. */
  private static int atALimit(List<CurveResult> curves, List<PooledCurveResult> pooled) {
    return (int)
        DoubleStream.concat(
                curves.stream()
                    .flatMap(curve -> curve.survivalAt().stream())
                    .flatMapToDouble(at -> at.survival().stream()),
                pooled.stream()
                    .flatMap(curve -> curve.times().stream())
                    .mapToDouble(PooledCurveResult.At::survival))
            .filter(survival -> survival == 0 || survival == 1)
            .count();
  }

  private void refuseTooMany(String where, long times) {
    Work.require(
        Limit.ITEMS,
        times * groups.size(),
        where,
        "Every curve is told at every time; ask for fewer times, or fewer curves at a time.");
  }

  private CurveResult curve(CurveGroup group) {
    Work.check();
    KaplanMeier curve = group.curve();
    if (curve.median().isEmpty()) {
      warn(
          group,
          "median-not-reached",
          say("analysis.median-not-reached", Map.of("curve", group.name())));
    }
    OptionalDouble lower = curve.medianLower(questions.level());
    OptionalDouble upper = curve.medianUpper(questions.level());
    WithoutWidth.ofMedian(group.name(), lower, upper).ifPresent(warnings::add);
    Optional<RestrictedMean> mean =
        questions.horizon().isPresent()
            ? curve.restrictedMean(questions.horizon().getAsDouble())
            : Optional.empty();
    if (questions.horizon().isPresent() && mean.isEmpty()) {
      tooShort(group, "analysis.mean-unknown", questions.horizon().getAsDouble());
    }
    return new CurveResult(
        group.group(),
        group.study(),
        group.times().size(),
        group.times().events(),
        curve.median(),
        lower,
        upper,
        mean.map(m -> OptionalDouble.of(m.estimate())).orElse(OptionalDouble.empty()),
        mean.map(m -> OptionalDouble.of(m.standardError())).orElse(OptionalDouble.empty()),
        questions.survivalAt().stream().map(time -> at(group, time)).toList(),
        group.difference(),
        group.times().patients().stream().map(SurvivalAnswer::individual).toList());
  }

  private static CurveResult.Individual individual(PatientTime patient) {
    return new CurveResult.Individual(patient.time(), patient.event());
  }

  private CurveResult.At at(CurveGroup group, double time) {
    KaplanMeier curve = group.curve();
    if (!curve.isKnownAt(time)) {
      tooShort(group, "analysis.survival-unknown", time);
    }
    return CurveResult.at(curve, time, questions.level());
  }

  private void tooShort(CurveGroup group, String sentence, double time) {
    warn(
        group,
        "follow-up-too-short",
        say(
            sentence,
            Map.of(
                "curve",
                group.name(),
                "time",
                String.valueOf(time),
                "longest",
                String.valueOf(group.curve().longest()))));
  }

  private void warn(CurveGroup group, String code, String message) {
    warnings.add(Result.Warning.of(code, message, group.name()));
  }
}
