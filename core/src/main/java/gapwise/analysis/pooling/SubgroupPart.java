package gapwise.analysis.pooling;

import gapwise.analysis.result.Result;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Each group of studies pooled, and groups compared. */
public final class SubgroupPart {
  private SubgroupPart() {}

  /**
   * Works it out; empty if the plan asks for no groups.
   *
   * @param places of values among the studies of each group
   * @param warnings takes what a reader must know
   */
  public static <D extends StudyData> Optional<SubgroupsResult> of(
      Synthesis<D> synthesis, PlacesPart places, List<Result.Warning> warnings) {
    return synthesis
        .plan()
        .groups()
        .map(groups -> of(synthesis, groups.commonVariance(), places, warnings));
  }

  private static <D extends StudyData> SubgroupsResult of(
      Synthesis<D> synthesis,
      boolean commonVariance,
      PlacesPart places,
      List<Result.Warning> warnings) {
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
        groups * synthesis.plan().options().backTransformAlsoWith().size(),
        "backTransformAlsoWith",
        "Every group is told with each of them; give fewer.");
    Subgroups pooled = synthesis.pooler().subgroups(levels, commonVariance);
    pooled.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    for (Subgroups.Group group : pooled.groups()) {
      group
          .pooled()
          .warnings()
          .forEach(one -> warnings.add(Result.Warning.ofGroup(group.level(), one)));
    }
    return new SubgroupsResult(told(synthesis, places, pooled), Summaries.between(pooled));
  }

  private static <D extends StudyData> List<SubgroupsResult.Subgroup> told(
      Synthesis<D> synthesis, PlacesPart places, Subgroups groups) {
    ShownBeside exact = new ShownBeside(synthesis.plan());
    List<SubgroupsResult.Subgroup> told = new ArrayList<>();
    for (Subgroups.Group group : groups.groups()) {
      Pooled pooled = group.pooled();
      List<D> data = data(synthesis, group.level());
      told.add(
          new SubgroupsResult.Subgroup(
              group.level(),
              group.studies(),
              exact.alone(
                  exact.with(
                      Summaries.summary(pooled, synthesis.measure().shown(data)), pooled, data),
                  synthesis.measure(),
                  data),
              exact.limit(pooled),
              Summaries.heterogeneity(pooled.heterogeneity()),
              places.ofGroup(synthesis, group.level(), pooled)));
    }
    return told;
  }

  private static <D extends StudyData> List<D> data(Synthesis<D> synthesis, String level) {
    return synthesis.studies().pooled().stream()
        .filter(entry -> entry.subgroup().equals(level))
        .map(entry -> entry.data().orElseThrow())
        .toList();
  }
}
