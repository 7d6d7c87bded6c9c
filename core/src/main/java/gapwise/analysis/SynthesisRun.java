package gapwise.analysis;

import gapwise.effect.BackTransform;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.pooling.Heterogeneity;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The task {@code synthesis}: rows to effects, effects to a pooled value, both to a result. */
final class SynthesisRun {
  private SynthesisRun() {}

  static <D extends StudyData> Result of(SynthesisPlan plan, Measure<D> measure, DataTable table) {
    Studies<D> studies = Studies.read(plan, measure, table);
    Pooler pooler = Pooler.of(plan, studies);
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    warnings.addAll(UnusedSettings.of(plan.json()));
    warnings.addAll(studies.warnings());
    Pooled pooled = pooler.all();
    if (pooler.size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(studies));
    } else {
      add(warnings, pooled.warnings());
    }
    BackTransform back = measure.shown(studies.pooledData());
    if (back.n().isPresent() && pooled.mean().isPresent()) {
      warnings.add(
          Result.Warning.of(
              "back-transform-depends-on-n",
              "the way back from the double arcsine needs one number of patients, here "
                  + back.n().getAsDouble()
                  + "; another number gives another proportion"));
    }
    Optional<Subgroups> groups = subgroups(plan, studies, pooler);
    groups.ifPresent(all -> add(warnings, all.warnings()));
    Optional<InfluenceResult> influence = SingleStudies.influence(plan, studies, warnings);
    Optional<List<InfluenceResult.Cumulative>> cumulative =
        SingleStudies.cumulative(plan, studies, table, pooler, warnings);
    ResultBuilder result =
        new ResultBuilder(plan.json(), StudyTable.data(studies, table))
            .studies(StudyTable.rows(studies, measure, pooled.weights(), plan.settings().level()))
            .summary(Summaries.summary(pooled, back))
            .fit(Summaries.fit(pooled))
            .influence(influence)
            .cumulative(cumulative);
    if (!pooled.heterogeneity().equals(Heterogeneity.UNKNOWN)) {
      result.heterogeneity(Summaries.heterogeneity(pooled.heterogeneity()));
    }
    groups.ifPresent(
        all ->
            result
                .subgroups(Summaries.subgroups(all, level -> back(studies, measure, level)))
                .betweenSubgroups(Summaries.between(all)));
    return result.with(warnings);
  }

  private static <D extends StudyData> Optional<Subgroups> subgroups(
      SynthesisPlan plan, Studies<D> studies, Pooler pooler) {
    if (plan.subgroup().isEmpty()) {
      return Optional.empty();
    }
    List<String> levels = studies.pooled().stream().map(Studies.Entry::subgroup).toList();
    return Optional.of(pooler.subgroups(levels, plan.commonSubgroupVariance()));
  }

  private static <D extends StudyData> BackTransform back(
      Studies<D> studies, Measure<D> measure, String level) {
    return measure.shown(
        studies.pooled().stream()
            .filter(entry -> entry.subgroup().equals(level))
            .map(entry -> entry.data().orElseThrow())
            .toList());
  }

  private static void add(List<Result.Warning> warnings, List<Problem> problems) {
    for (Problem problem : problems) {
      warnings.add(Result.Warning.of(problem.code(), problem.message()));
    }
  }
}
