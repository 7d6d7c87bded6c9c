package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.StudyData;
import gapwise.synthesis.multilevel.ThreeLevelFit;
import gapwise.synthesis.multilevel.ThreeLevelRegression;
import gapwise.synthesis.regression.Design;
import gapwise.synthesis.regression.RobustVariance;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The variances between clusters and within them; with moderators the regression, and robust
 * standard errors if the plan asks for them.
 */
final class ThreeLevelPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return !plan.cluster().isEmpty();
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    if (!(synthesis.pooler() instanceof ClusterPooler clusters)) {
      return;
    }
    JsonNode json = synthesis.plan().json();
    if (!json.has("moderators")) {
      clusters.whole().fit().ifPresent(fit -> variances(fit, result));
      if (json.has("robustVariance") && clusters.whole().fit().isPresent()) {
        List<Integer> all = IntStream.range(0, clusters.size()).boxed().toList();
        robust(
            regression(clusters, Design.ofOneMean(all.size()), all),
            clusters.clustersAt(all),
            synthesis.plan(),
            result,
            warnings);
      }
      return;
    }
    ModeratorDesign design =
        ModeratorDesign.of(
            json.get("moderators"), synthesis.table(), synthesis.studies().pooled(), warnings);
    ThreeLevelRegression regression = regression(clusters, design.design(), design.places());
    warnings.addAll(StudyWarnings.of(regression.warnings()));
    result.studies(
        StudyTable.rows(
            synthesis.studies(),
            synthesis.measure(),
            shares(regression, design)::get,
            synthesis.plan().settings().level()));
    regression.fit().ifPresent(fit -> told(regression, fit, result));
    if (json.has("robustVariance")) {
      robust(regression, clusters.clustersAt(design.places()), synthesis.plan(), result, warnings);
    }
  }

  private static ThreeLevelRegression regression(
      ClusterPooler clusters, Design design, List<Integer> places) {
    return ThreeLevelRegression.of(
        clusters.sample().at(places),
        design,
        clusters.clustersAt(places),
        clusters.restricted(),
        clusters.settings().level());
  }

  private static void variances(ThreeLevelFit fit, ResultBuilder result) {
    if (fit.told() != ThreeLevelFit.Told.ONLY_SUM) {
      result.threeLevel(new ThreeLevelResult(fit.betweenVariance(), fit.withinVariance()));
    }
  }

  private static void told(
      ThreeLevelRegression regression, ThreeLevelFit fit, ResultBuilder result) {
    variances(fit, result);
    Result.Heterogeneity left = Summaries.heterogeneity(fit.heterogeneity());
    result.heterogeneity(left);
    result.fit(Optional.of(new Result.Fit(fit.logLikelihood(), fit.restricted(), fit.converged())));
    OptionalDouble share = regression.rSquared();
    result.regression(
        new RegressionResult(
            regression.coefficients().stream()
                .map(one -> RegressionResult.Coefficient.of(one.term(), one.value()))
                .toList(),
            new RegressionResult.ResidualQ(left.q(), left.degreesOfFreedom(), left.pValue()),
            regression.moderatorTest().map(RegressionResult.Test::of),
            share.isEmpty() ? share : OptionalDouble.of(100 * share.getAsDouble()),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()));
  }

  private static void robust(
      ThreeLevelRegression regression,
      List<String> clusters,
      SynthesisPlan plan,
      ResultBuilder result,
      List<Result.Warning> warnings) {
    RobustVariance.Correction correction =
        RobustVariance.Correction.valueOf(
            plan.json().get("robustVariance").asText().toUpperCase(Locale.ROOT));
    regression
        .robust(clusters, correction, plan.settings().level())
        .ifPresent(
            robust -> {
              warnings.addAll(StudyWarnings.of(robust.warnings()));
              if (!robust.coefficients().isEmpty()) {
                result.robust(RobustResult.of(robust));
              }
            });
  }

  /** The share of each pooled row that enters; empty for the others. */
  private static Shares shares(ThreeLevelRegression regression, ModeratorDesign design) {
    Map<Integer, Double> byPlace = new HashMap<>();
    List<Double> shares = regression.fit().map(ThreeLevelFit::shares).orElse(List.of());
    for (int i = 0; i < shares.size(); i++) {
      byPlace.put(design.places().get(i), shares.get(i));
    }
    return new Shares(byPlace);
  }

  private record Shares(Map<Integer, Double> byPlace) {
    OptionalDouble get(int place) {
      return byPlace.containsKey(place)
          ? OptionalDouble.of(byPlace.get(place))
          : OptionalDouble.empty();
    }
  }
}
