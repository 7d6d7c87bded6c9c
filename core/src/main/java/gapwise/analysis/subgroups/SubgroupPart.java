package gapwise.analysis.subgroups;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.bayesian.BayesianPart;
import gapwise.analysis.pooling.PlacesPart;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.pooling.ShownBeside;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Summaries;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Each group of studies pooled, and groups compared. */
public final class SubgroupPart {
  /** Measures of one arm a study, whose groups nobody was allotted to. */
  private static final Set<String> OF_SINGLE_ARMS = Set.of("proportion", "mean", "incidence-rate");

  /**
   * Up to so many studies in all the comparison of groups by chi-squared rejects more than 7 of 100
   * true hypotheses at 5 %: our simulation, docs/methods/error-rates.md.
   */
  private static final int FEW_FOR_CHI_SQUARED = 20;

  /** So does one with so few studies in a group, whatever the others have: the same simulation. */
  private static final int FEW_OF_A_GROUP = 5;

  /**
   * With fewer studies F rejects less than 3 of 100 true hypotheses at 5 %: the same simulation.
   */
  private static final int FEW_FOR_F = 10;

  private SubgroupPart() {}

  /**
   * Works it out; empty if the plan asks for no groups.
   *
   * @param places of values among the studies of each group
   * @param bayesian what is asked of the posterior of each group
   * @param warnings takes what a reader must know
   */
  public static <D extends StudyData> Optional<SubgroupsResult> of(
      Synthesis<D> synthesis,
      PlacesPart places,
      BayesianPart bayesian,
      List<Result.Warning> warnings) {
    return synthesis
        .plan()
        .groups()
        .map(
            groups -> {
              Subgroups pooled = pooled(synthesis, groups.variance(), warnings);
              return new SubgroupsResult(
                  told(synthesis, places, bayesian, pooled, warnings), between(pooled));
            });
  }

  private static <D extends StudyData> Subgroups pooled(
      Synthesis<D> synthesis, PoolingPlan.Groups.Variance variance, List<Result.Warning> warnings) {
    List<String> levels =
        synthesis.studies().pooled().stream().map(Studies.Entry::subgroup).toList();
    Map<String, Long> sizes =
        levels.stream().collect(Collectors.groupingBy(level -> level, Collectors.counting()));
    long groups = sizes.size();
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
    Subgroups pooled = synthesis.pooler().subgroups(levels, variance.isCommon(sizes.values()));
    pooled.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    for (Subgroups.Group group : pooled.groups()) {
      group
          .pooled()
          .warnings()
          .forEach(one -> warnings.add(Result.Warning.ofGroup(group.level(), one)));
    }
    cautions(synthesis, pooled, warnings);
    return pooled;
  }

  private static SubgroupsResult.Between between(Subgroups groups) {
    return new SubgroupsResult.Between(
        groups.test().q(),
        groups.test().degreesOfFreedom(),
        groups.test().statistic(),
        groups.test().residualDegreesOfFreedom(),
        groups.test().pValue(),
        groups.tauSquared());
  }

  private static <D extends StudyData> void cautions(
      Synthesis<D> synthesis, Subgroups pooled, List<Result.Warning> warnings) {
    if (pooled.groups().size() < 2) {
      return;
    }
    if (OF_SINGLE_ARMS.contains(synthesis.plan().measure())) {
      warnings.add(Result.Warning.of("groups-of-patients-differ", say("analysis.groups-differ")));
    }
    if (pooled.test().pValue().isEmpty()) {
      return;
    }
    int studies = pooled.groups().stream().mapToInt(Subgroups.Group::studies).sum();
    boolean small = pooled.groups().stream().anyMatch(group -> group.studies() <= FEW_OF_A_GROUP);
    if (pooled.test().statistic().isPresent() && studies < FEW_FOR_F) {
      warnings.add(
          Result.Warning.of(
              "error-rate-not-held",
              say("analysis.subgroup-test-too-careful", Map.of("studies", studies))));
    }
    if (pooled.test().statistic().isEmpty()
        && synthesis.plan().model().hasSpread()
        && (small || studies <= FEW_FOR_CHI_SQUARED)) {
      warnings.add(
          Result.Warning.of(
              "error-rate-not-held",
              say("analysis.subgroup-test-not-held", Map.of("studies", studies))));
    }
  }

  private static <D extends StudyData> List<SubgroupsResult.Subgroup> told(
      Synthesis<D> synthesis,
      PlacesPart places,
      BayesianPart bayesian,
      Subgroups groups,
      List<Result.Warning> warnings) {
    ShownBeside exact = new ShownBeside(synthesis.plan());
    List<SubgroupsResult.Subgroup> told = new ArrayList<>();
    for (Subgroups.Group group : groups.groups()) {
      Pooled pooled = group.pooled();
      List<D> data = data(synthesis, group.level());
      Optional<Result.Summary> summary =
          exact.alone(
              exact.with(Summaries.summary(pooled, synthesis.measure().shown(data)), pooled, data),
              synthesis.measure(),
              data);
      Summaries.withoutWidth(summary)
          .ifPresent(one -> warnings.add(Result.Warning.ofGroup(group.level(), one)));
      told.add(
          new SubgroupsResult.Subgroup(
              group.level(),
              group.studies(),
              summary,
              exact.limit(pooled),
              Summaries.heterogeneity(pooled.heterogeneity()),
              places.ofGroup(synthesis, group.level(), pooled),
              bayesian.ofGroup(synthesis, group.level())));
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
