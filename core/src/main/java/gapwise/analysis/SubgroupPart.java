package gapwise.analysis;

import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Subgroups;
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
    Subgroups groups =
        synthesis.pooler().subgroups(levels, synthesis.plan().commonSubgroupVariance());
    warnings.addAll(StudyWarnings.of(groups.warnings()));
    result
        .subgroups(Summaries.subgroups(groups, level -> back(synthesis, level)))
        .betweenSubgroups(Summaries.between(groups));
  }

  private static <D extends StudyData> BackTransform back(Synthesis<D> synthesis, String level) {
    return synthesis
        .measure()
        .shown(
            synthesis.studies().pooled().stream()
                .filter(entry -> entry.subgroup().equals(level))
                .map(entry -> entry.data().orElseThrow())
                .toList());
  }
}
