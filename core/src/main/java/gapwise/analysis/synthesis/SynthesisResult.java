package gapwise.analysis.synthesis;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.clusters.RobustResult;
import gapwise.analysis.clusters.ThreeLevelResult;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.pooling.InfluenceResult;
import gapwise.analysis.pooling.PlaceResult;
import gapwise.analysis.pooling.PooledResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.TaskResult;
import gapwise.analysis.smallstudy.FunnelResult;
import gapwise.analysis.smallstudy.SmallStudyEffectsResult;
import gapwise.analysis.subgroups.SubgroupsResult;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a synthesis makes of the studies: the pooled value and whatever else the plan asks for.
 * Parts not asked for, or that cannot be told, are empty.
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
@JsonPropertyOrder({
  "pooled",
  "places",
  "subgroups",
  "betweenSubgroups",
  "influence",
  "cumulative",
  "regression",
  "robust",
  "threeLevel",
  "bayesian",
  "smallStudyEffects",
  "funnel"
})
public record SynthesisResult(
    @JsonUnwrapped PooledResult pooled,
    Optional<List<PlaceResult>> places,
    @JsonIgnore Optional<SubgroupsResult> groups,
    Optional<InfluenceResult> influence,
    Optional<List<InfluenceResult.Cumulative>> cumulative,
    Optional<RegressionResult> regression,
    Optional<RobustResult> robust,
    Optional<ThreeLevelResult> threeLevel,
    Optional<BayesianResult> bayesian,
    Optional<SmallStudyEffectsResult> smallStudyEffects,
    Optional<FunnelResult> funnel)
    implements TaskResult {
  private static final SynthesisResult NOTHING =
      new SynthesisResult(
          new PooledResult(
              List.of(),
              Optional.empty(),
              OptionalDouble.empty(),
              Optional.empty(),
              Optional.empty()),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /** What a result says of a synthesis; nothing if its task is another. */
  public static SynthesisResult of(Result result) {
    return result.part(SynthesisResult.class).orElse(NOTHING);
  }

  /** One entry a data row. */
  @JsonIgnore
  public List<Result.Study> studies() {
    return pooled.studies();
  }

  /** The pooled value. */
  @JsonIgnore
  public Optional<Result.Summary> summary() {
    return pooled.summary();
  }

  /** How far results differ. */
  @JsonIgnore
  public Optional<Result.Heterogeneity> heterogeneity() {
    return pooled.heterogeneity();
  }

  /** Each group of studies; none if the plan asks for none. */
  @JsonIgnore
  public List<SubgroupsResult.Subgroup> listOfGroups() {
    return groups.map(SubgroupsResult::subgroups).orElse(List.of());
  }

  /** The group of a level, if there is one. */
  public Optional<SubgroupsResult.Subgroup> group(String level) {
    return listOfGroups().stream().filter(group -> group.level().equals(level)).findFirst();
  }

  @JsonProperty("subgroups")
  Optional<List<SubgroupsResult.Subgroup>> subgroups() {
    return groups.map(SubgroupsResult::subgroups);
  }

  @JsonProperty("betweenSubgroups")
  Optional<SubgroupsResult.Between> betweenSubgroups() {
    return groups.map(SubgroupsResult::betweenSubgroups);
  }
}
