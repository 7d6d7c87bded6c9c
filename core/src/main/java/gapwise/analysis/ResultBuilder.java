package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/** Puts a result together from the parts a task has; the others stay empty. */
final class ResultBuilder {
  private final ObjectNode plan;
  private final Result.Data data;
  private Optional<List<Result.Study>> studies = Optional.empty();
  private Optional<Result.Summary> summary = Optional.empty();
  private Optional<Result.Heterogeneity> heterogeneity = Optional.empty();
  private Optional<Result.Fit> fit = Optional.empty();
  private Optional<List<Result.Subgroup>> subgroups = Optional.empty();
  private Optional<Result.BetweenSubgroups> betweenSubgroups = Optional.empty();
  private Optional<InfluenceResult> influence = Optional.empty();
  private Optional<List<InfluenceResult.Cumulative>> cumulative = Optional.empty();
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

  ResultBuilder heterogeneity(Result.Heterogeneity heterogeneity) {
    this.heterogeneity = Optional.of(heterogeneity);
    return this;
  }

  ResultBuilder fit(Optional<Result.Fit> fit) {
    this.fit = fit;
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

  ResultBuilder influence(Optional<InfluenceResult> influence) {
    this.influence = influence;
    return this;
  }

  ResultBuilder cumulative(Optional<List<InfluenceResult.Cumulative>> cumulative) {
    this.cumulative = cumulative;
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
        heterogeneity,
        fit,
        subgroups,
        betweenSubgroups,
        influence,
        cumulative,
        intervals,
        pooled,
        conversions,
        agreement,
        warnings);
  }
}
