package gapwise.analysis;

import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.ArrayList;
import java.util.List;

/** Each group of studies pooled, and groups compared. */
final class SubgroupPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return plan.subgroup().isPresent();
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    List<String> levels =
        synthesis.studies().pooled().stream().map(Studies.Entry::subgroup).toList();
    long groups = levels.stream().distinct().count();
    Work.require(
        Limit.CATEGORIES,
        groups,
        "subgroup",
        "Name a column with fewer different texts, or make numbers a moderator.");
    Work.require(
        Limit.ITEMS,
        groups * synthesis.plan().json().path("backTransformAlsoWith").size(),
        "backTransformAlsoWith",
        "Every group is told with each of them; give fewer.");
    Subgroups pooled =
        synthesis.pooler().subgroups(levels, synthesis.plan().commonSubgroupVariance());
    warnings.addAll(StudyWarnings.of(pooled.warnings()));
    result.subgroups(withExact(synthesis, pooled)).betweenSubgroups(Summaries.between(pooled));
  }

  private static <D extends StudyData> List<Result.Subgroup> withExact(
      Synthesis<D> synthesis, Subgroups groups) {
    ExactShown exact = new ExactShown(synthesis.plan());
    List<Result.Subgroup> told =
        Summaries.subgroups(groups, level -> synthesis.measure().shown(data(synthesis, level)));
    List<Result.Subgroup> full = new ArrayList<>();
    for (int i = 0; i < told.size(); i++) {
      Pooled pooled = groups.groups().get(i).pooled();
      Result.Subgroup one = told.get(i);
      full.add(
          new Result.Subgroup(
              one.level(),
              one.studies(),
              exact.with(one.summary(), pooled, data(synthesis, one.level())),
              exact.limit(pooled),
              one.heterogeneity(),
              PlacesPart.ofGroup(synthesis, one.level(), pooled)));
    }
    return full;
  }

  private static <D extends StudyData> List<D> data(Synthesis<D> synthesis, String level) {
    return synthesis.studies().pooled().stream()
        .filter(entry -> entry.subgroup().equals(level))
        .map(entry -> entry.data().orElseThrow())
        .toList();
  }
}
