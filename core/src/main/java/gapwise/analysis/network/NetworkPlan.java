package gapwise.analysis.network;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.GivenEffect;
import gapwise.effect.Measure;
import gapwise.effect.arms.MultiArmMeasure;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.RankDraws;
import java.util.List;
import java.util.Optional;

/**
 * Treatments compared through a network of studies, whose rows are arms or contrasts.
 *
 * @param arms how rows of arms become effects; empty if rows are contrasts
 * @param contrasts how rows of contrasts are read; empty if rows are arms
 * @param exact whether counts are taken by their own likelihood, nothing added to empty cells
 * @param reference the treatment others are set against; empty for the first by alphabet
 * @param higherIsBetter for the ranking; without it there is none
 * @param moderator a number of studies along which comparisons change, if asked for
 * @param unused what the plan says without bearing
 */
public record NetworkPlan(
    PlanHead head,
    Optional<MultiArmMeasure<?>> arms,
    Optional<Measure<GivenEffect>> contrasts,
    NetworkSettings settings,
    boolean exact,
    Optional<String> reference,
    Optional<Boolean> higherIsBetter,
    RankDraws draws,
    Optional<NetworkModerator> moderator,
    List<Result.Warning> unused)
    implements Plan {
  public NetworkPlan {
    if (arms.isPresent() == contrasts.isPresent()) {
      throw new IllegalArgumentException("rows are either arms or contrasts");
    }
    unused = List.copyOf(unused);
  }

  @Override
  public Result runOn(DataTable table) {
    return NetworkRun.of(this, table);
  }
}
