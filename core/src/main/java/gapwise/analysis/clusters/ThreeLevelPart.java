package gapwise.analysis.clusters;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.moderators.AskedRegression;
import gapwise.analysis.moderators.ModeratorDesign;
import gapwise.analysis.moderators.ModeratorQuestion;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.pooling.PooledResult;
import gapwise.analysis.pooling.StudyTable;
import gapwise.analysis.pooling.Summaries;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.synthesis.multilevel.ThreeLevelFit;
import gapwise.synthesis.multilevel.ThreeLevelRegression;
import gapwise.synthesis.multilevel.VarianceLimits;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The variances between clusters and within them; with moderators the regression, and robust
 * standard errors if the plan asks for them.
 */
public final class ThreeLevelPart {
  /** As of studies, from the fewest of which I squared is told without a caution. */
  private static final int FEWEST_FOR_I_SQUARED = 10;

  private ThreeLevelPart() {}

  /**
   * What three levels make of the rows.
   *
   * @param rows with their weights, only with moderators: else the pooled value has them
   */
  public record Told(
      Optional<PooledResult> rows,
      Optional<ThreeLevelResult> variances,
      Optional<RegressionResult> regression,
      Optional<RobustResult> robust) {
    /** Of another model. */
    public static final Told NOTHING =
        new Told(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * Works it out.
   *
   * @param warnings takes what a reader must know
   */
  public static <D extends StudyData> Told of(
      Synthesis<D> synthesis,
      Optional<AskedRegression> moderators,
      Optional<RobustPart> robust,
      List<Result.Warning> warnings) {
    if (!(synthesis.pooler() instanceof ClusterPooler clusters)) {
      return Told.NOTHING;
    }
    return moderators.isPresent()
        ? regressed(synthesis, clusters, moderators.get(), robust, warnings)
        : pooled(clusters, robust, warnings);
  }

  private static Told pooled(
      ClusterPooler clusters, Optional<RobustPart> robust, List<Result.Warning> warnings) {
    Optional<ThreeLevelFit> fit = clusters.whole().fit();
    List<Integer> all = IntStream.range(0, clusters.size()).boxed().toList();
    return new Told(
        Optional.empty(),
        fit.flatMap(one -> variances(one, clusters.settings().level(), warnings)),
        Optional.empty(),
        fit.isPresent() && robust.isPresent()
            ? robust(
                regression(clusters, DesignMatrix.ofOneMean(all.size()), all),
                clusters.clustersAt(all),
                clusters.settings().level(),
                robust.get(),
                warnings)
            : Optional.empty());
  }

  private static <D extends StudyData> Told regressed(
      Synthesis<D> synthesis,
      ClusterPooler clusters,
      AskedRegression asked,
      Optional<RobustPart> robust,
      List<Result.Warning> warnings) {
    ModeratorDesign design = ModeratorQuestion.of(synthesis, asked, warnings).design();
    ThreeLevelRegression regression = regression(clusters, design.design(), design.places());
    regression.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    Optional<ThreeLevelFit> fit = regression.fit();
    PooledResult rows =
        new PooledResult(
            StudyTable.rows(
                synthesis.studies(),
                synthesis.measure(),
                shares(regression, design)::get,
                synthesis.plan().level()),
            Optional.empty(),
            OptionalDouble.empty(),
            fit.map(one -> Summaries.heterogeneity(one.heterogeneity())),
            fit.map(one -> new Result.Fit(one.logLikelihood(), one.restricted(), one.converged())));
    return new Told(
        Optional.of(rows),
        fit.flatMap(one -> variances(one, synthesis.plan().level(), warnings)),
        fit.map(one -> told(regression, one)),
        robust.flatMap(
            one ->
                robust(
                    regression,
                    clusters.clustersAt(design.places()),
                    synthesis.plan().level(),
                    one,
                    warnings)));
  }

  private static ThreeLevelRegression regression(
      ClusterPooler clusters, DesignMatrix design, List<Integer> places) {
    return ThreeLevelRegression.of(
        clusters.sample().at(places),
        design,
        clusters.clustersAt(places),
        clusters.restricted(),
        clusters.settings().level(),
        clusters.limits());
  }

  private static Optional<ThreeLevelResult> variances(
      ThreeLevelFit fit, double level, List<Result.Warning> warnings) {
    if (fit.told() == ThreeLevelFit.Told.ONLY_SUM) {
      return Optional.empty();
    }
    Optional<VarianceLimits> limits = fit.limits(level);
    if (limits.isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "limits-left-out",
              say(
                  "analysis.variance-limits-left-out",
                  Map.of("rows", fit.size(), "most", VarianceLimits.MOST_ROWS))));
    }
    if (limits.filter(one -> !one.isWhole(fit)).isPresent()) {
      warnings.add(Result.Warning.of("limits-left-out", say("analysis.variance-limits-not-found")));
    }
    if (fit.iSquaredBetween().isPresent() && fit.clusters() < FEWEST_FOR_I_SQUARED) {
      warnings.add(
          Result.Warning.of(
              "i-squared-of-few-studies",
              say("analysis.i-squared-of-few-clusters", Map.of("clusters", fit.clusters()))));
    }
    Optional<Interval> between = limits.flatMap(VarianceLimits::between);
    Optional<Interval> within = limits.flatMap(VarianceLimits::within);
    Optional<Interval> shareBetween = limits.flatMap(VarianceLimits::shareBetween);
    Optional<Interval> shareWithin = limits.flatMap(VarianceLimits::shareWithin);
    return Optional.of(
        new ThreeLevelResult(
            fit.betweenVariance(),
            limit(between, Interval::lower),
            limit(between, Interval::upper),
            fit.withinVariance(),
            limit(within, Interval::lower),
            limit(within, Interval::upper),
            percent(fit.iSquaredBetween()),
            percent(limit(shareBetween, Interval::lower)),
            percent(limit(shareBetween, Interval::upper)),
            percent(fit.iSquaredWithin()),
            percent(limit(shareWithin, Interval::lower)),
            percent(limit(shareWithin, Interval::upper))));
  }

  private static OptionalDouble limit(
      Optional<Interval> interval, ToDoubleFunction<Interval> which) {
    return interval.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(which.applyAsDouble(interval.get()));
  }

  private static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent() ? OptionalDouble.of(100 * share.getAsDouble()) : share;
  }

  private static RegressionResult told(ThreeLevelRegression regression, ThreeLevelFit fit) {
    Result.Heterogeneity left = Summaries.heterogeneity(fit.heterogeneity());
    OptionalDouble share = regression.rSquared();
    return new RegressionResult(
        regression.coefficients().stream()
            .map(one -> RegressionResult.Coefficient.of(one.term(), one.value()))
            .toList(),
        Optional.of(
            new RegressionResult.ResidualQ(left.q(), left.degreesOfFreedom(), left.pValue())),
        regression.moderatorTest().map(RegressionResult.Test::of),
        share.isEmpty() ? share : OptionalDouble.of(100 * share.getAsDouble()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Optional<RobustResult> robust(
      ThreeLevelRegression regression,
      List<String> clusters,
      double level,
      RobustPart asked,
      List<Result.Warning> warnings) {
    return regression
        .robust(clusters, asked.correction(), level)
        .flatMap(robust -> RobustPart.told(robust, warnings));
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
