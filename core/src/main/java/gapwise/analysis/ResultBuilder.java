package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts a result together from the parts a task has; the others stay empty. */
final class ResultBuilder {
  private final ObjectNode plan;
  private final Result.Data data;
  private Optional<List<Result.Study>> studies = Optional.empty();
  private Optional<Result.Summary> summary = Optional.empty();
  private OptionalDouble onlyLimit = OptionalDouble.empty();
  private Optional<Result.Heterogeneity> heterogeneity = Optional.empty();
  private Optional<Result.Fit> fit = Optional.empty();
  private Optional<List<PlaceResult>> places = Optional.empty();
  private Optional<List<Result.Subgroup>> subgroups = Optional.empty();
  private Optional<Result.BetweenSubgroups> betweenSubgroups = Optional.empty();
  private Optional<InfluenceResult> influence = Optional.empty();
  private Optional<List<InfluenceResult.Cumulative>> cumulative = Optional.empty();
  private Optional<RegressionResult> regression = Optional.empty();
  private Optional<RobustResult> robust = Optional.empty();
  private Optional<ThreeLevelResult> threeLevel = Optional.empty();
  private Optional<BayesianResult> bayesian = Optional.empty();
  private Optional<NetworkResult> network = Optional.empty();
  private Optional<SmallStudyEffectsResult> smallStudyEffects = Optional.empty();
  private Optional<FunnelResult> funnel = Optional.empty();
  private Optional<MultiverseResult> multiverse = Optional.empty();
  private Optional<TrialResult> trial = Optional.empty();
  private Optional<PatientsResult> patients = Optional.empty();
  private Optional<List<CurveResult>> curves = Optional.empty();
  private Optional<ComparisonResult> comparison = Optional.empty();
  private Optional<List<PooledCurveResult>> pooledCurves = Optional.empty();
  private Optional<List<Result.Intervals>> intervals = Optional.empty();
  private Optional<Result.Intervals> pooled = Optional.empty();
  private Optional<List<Result.Conversion>> conversions = Optional.empty();
  private Optional<AgreementResult> agreement = Optional.empty();

  ResultBuilder(ObjectNode plan, Result.Data data) {
    this.plan = plan;
    this.data = data;
  }

  ResultBuilder studies(List<Result.Study> studies) {
    this.studies = Optional.of(List.copyOf(studies));
    return this;
  }

  ResultBuilder summary(Optional<Result.Summary> summary) {
    this.summary = summary;
    return this;
  }

  /** Where the pooled value goes when there is no summary. */
  ResultBuilder onlyLimit(OptionalDouble limit) {
    onlyLimit = limit;
    return this;
  }

  ResultBuilder heterogeneity(Result.Heterogeneity heterogeneity) {
    this.heterogeneity = Optional.of(heterogeneity);
    return this;
  }

  ResultBuilder fit(Optional<Result.Fit> fit) {
    this.fit = fit;
    return this;
  }

  ResultBuilder places(List<PlaceResult> places) {
    this.places = Optional.of(List.copyOf(places));
    return this;
  }

  ResultBuilder subgroups(List<Result.Subgroup> subgroups) {
    this.subgroups = Optional.of(List.copyOf(subgroups));
    return this;
  }

  ResultBuilder betweenSubgroups(Result.BetweenSubgroups betweenSubgroups) {
    this.betweenSubgroups = Optional.of(betweenSubgroups);
    return this;
  }

  ResultBuilder influence(InfluenceResult influence) {
    this.influence = Optional.of(influence);
    return this;
  }

  ResultBuilder cumulative(List<InfluenceResult.Cumulative> cumulative) {
    this.cumulative = Optional.of(List.copyOf(cumulative));
    return this;
  }

  ResultBuilder regression(RegressionResult regression) {
    this.regression = Optional.of(regression);
    return this;
  }

  ResultBuilder robust(RobustResult robust) {
    this.robust = Optional.of(robust);
    return this;
  }

  ResultBuilder threeLevel(ThreeLevelResult threeLevel) {
    this.threeLevel = Optional.of(threeLevel);
    return this;
  }

  ResultBuilder bayesian(BayesianResult bayesian) {
    this.bayesian = Optional.of(bayesian);
    return this;
  }

  ResultBuilder network(NetworkResult network) {
    this.network = Optional.of(network);
    return this;
  }

  ResultBuilder smallStudyEffects(SmallStudyEffectsResult smallStudyEffects) {
    this.smallStudyEffects = Optional.of(smallStudyEffects);
    return this;
  }

  ResultBuilder funnel(FunnelResult funnel) {
    this.funnel = Optional.of(funnel);
    return this;
  }

  ResultBuilder multiverse(MultiverseResult multiverse) {
    this.multiverse = Optional.of(multiverse);
    return this;
  }

  ResultBuilder trial(TrialResult trial) {
    this.trial = Optional.of(trial);
    return this;
  }

  ResultBuilder patients(PatientsResult patients) {
    this.patients = Optional.of(patients);
    return this;
  }

  ResultBuilder curves(List<CurveResult> curves) {
    this.curves = Optional.of(List.copyOf(curves));
    return this;
  }

  ResultBuilder comparison(ComparisonResult comparison) {
    this.comparison = Optional.of(comparison);
    return this;
  }

  ResultBuilder pooledCurves(List<PooledCurveResult> pooledCurves) {
    this.pooledCurves = Optional.of(List.copyOf(pooledCurves));
    return this;
  }

  ResultBuilder intervals(List<Result.Intervals> intervals) {
    this.intervals = Optional.of(List.copyOf(intervals));
    return this;
  }

  ResultBuilder pooled(Optional<Result.Intervals> pooled) {
    this.pooled = pooled;
    return this;
  }

  ResultBuilder conversions(List<Result.Conversion> conversions) {
    this.conversions = Optional.of(List.copyOf(conversions));
    return this;
  }

  ResultBuilder agreement(AgreementResult agreement) {
    this.agreement = Optional.of(agreement);
    return this;
  }

  /** The result with its warnings. */
  Result with(List<Result.Warning> warnings) {
    return new Result(
        plan,
        data,
        studies,
        summary,
        onlyLimit,
        heterogeneity,
        fit,
        places,
        subgroups,
        betweenSubgroups,
        influence,
        cumulative,
        regression,
        robust,
        threeLevel,
        bayesian,
        network,
        smallStudyEffects,
        funnel,
        multiverse,
        trial,
        patients,
        curves,
        comparison,
        pooledCurves,
        intervals,
        pooled,
        conversions,
        agreement,
        warnings);
  }
}
