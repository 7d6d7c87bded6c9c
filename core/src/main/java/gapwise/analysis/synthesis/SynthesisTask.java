package gapwise.analysis.synthesis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.bayesian.PriorReader;
import gapwise.analysis.clusters.ClusteredEffectsModel;
import gapwise.analysis.network.NetworkModel;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.analysis.pooling.CountsModel;
import gapwise.analysis.pooling.EffectsModel;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.pooling.Model;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.result.Result;
import gapwise.effect.EmptyCells;
import gapwise.effect.MeasureOptions;
import gapwise.effect.MeasureOptions.Pooling;
import gapwise.effect.Measures;
import gapwise.problem.Problems;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.pooling.CountPooling;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The task {@code synthesis}. */
public final class SynthesisTask implements Task {
  /** Papers print 95 % limits unless they say otherwise. */
  static final double USUAL_LIMITS_LEVEL = 0.95;

  @Override
  public String word() {
    return "synthesis";
  }

  @Override
  public void fill(Filling plan) {
    SynthesisDefaults.fill(plan);
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    SynthesisRules.check(full, problems);
  }

  @Override
  public Plan read(ObjectNode full) {
    List<Result.Warning> unused = UnusedSettings.of(full);
    if (NetworkModel.asked(full)) {
      return NetworkModel.read(full, options(full), unused);
    }
    PoolingPlan pooling = pooling(full);
    return new SynthesisPlan(pooling, AskedParts.of(full, pooling.model().settings()), unused);
  }

  /** How a checked plan reads and pools studies. */
  public static PoolingPlan pooling(ObjectNode full) {
    PlanHead head = PlanHead.of(full);
    MeasureOptions options = options(full);
    return new PoolingPlan(
        head,
        options,
        Measures.named(head.measure(), options).orElseThrow(),
        model(full, head.measure()),
        Optional.ofNullable(full.get("subgroup"))
            .map(
                column ->
                    new PoolingPlan.Groups(
                        column.asText(),
                        PoolingPlan.Groups.Variance.named(full.path("subgroupVariance").asText()),
                        full.path("subgroupBlanks").asText().equals("apart"))));
  }

  private static Model model(ObjectNode full, String measure) {
    PoolingSettings settings = settings(full);
    return switch (full.get("model").asText()) {
      case "exact-likelihood" -> ExactModels.of(full, settings);
      case "three-level" -> ClusteredEffectsModel.of(full, settings);
      case "bayesian" -> PriorReader.model(full, settings);
      default ->
          full.path("pooling").asText().equals("mantel-haenszel")
              ? new CountsModel(CountPooling.mantelHaenszel(measure).orElseThrow(), settings)
              : new EffectsModel(settings);
    };
  }

  private static MeasureOptions options(ObjectNode full) {
    JsonNode n = full.path("backTransformN");
    List<Double> also = new ArrayList<>();
    full.path("backTransformAlsoWith").forEach(one -> also.add(one.asDouble()));
    return new MeasureOptions(
        full.path("scale").asText(Measures.scales(full.get("measure").asText()).get(0)),
        emptyCellsOf(full),
        n.isNumber() ? OptionalDouble.of(n.asDouble()) : OptionalDouble.empty(),
        also,
        full.path("smallSampleCorrection").asText("exact").equals("exact"),
        full.path("standardisedVariance").asText().equals("factor-squared"),
        full.path("reportedAs").asText().equals("ratio"),
        full.path("limitsLevel").asDouble(USUAL_LIMITS_LEVEL),
        full.has("correlation")
            ? OptionalDouble.of(full.get("correlation").asDouble())
            : OptionalDouble.empty(),
        switch (ExactModels.areCounts(full) ? "exact" : full.path("pooling").asText()) {
          case "mantel-haenszel", "exact" -> Pooling.COUNTS;
          case "peto" -> Pooling.PETO;
          default -> Pooling.INVERSE_VARIANCE;
        });
  }

  private static EmptyCells emptyCellsOf(ObjectNode full) {
    if (ExactModels.isNetwork(full)) {
      return EmptyCells.USUAL.withoutAdding();
    }
    return SynthesisDefaults.usesContinuityCorrection(full) ? emptyCells(full) : EmptyCells.USUAL;
  }

  /** What the fields of a plan, or of one variant of it, say of empty cells. */
  public static EmptyCells emptyCells(JsonNode fields) {
    JsonNode correction = fields.path("continuityCorrection");
    EmptyCells usual = EmptyCells.USUAL;
    return new EmptyCells(
        correction.path("amount").asDouble(usual.amount()),
        EmptyCells.Tables.valueOf(
            constant(correction.path("tables").asText(usual.tables().word()))),
        EmptyCells.UninformativeStudies.valueOf(
            constant(fields.path("uninformativeStudies").asText(usual.uninformative().word()))));
  }

  private static PoolingSettings settings(ObjectNode full) {
    boolean random = full.get("model").asText().equals("random-effects");
    return new PoolingSettings(
        random
            ? TauSquaredEstimators.named(full.get("betweenStudyVariance").asText())
            : Optional.empty(),
        MeanIntervals.named(full.get("interval").asText()).orElse(MeanIntervals.normal()),
        new Prediction(
            Prediction.Reference.named(full.path("predictionInterval").asText())
                .orElse(Prediction.Reference.T_K_MINUS_2),
            Prediction.Error.valueOf(
                constant(full.path("predictionStandardError").asText("sum-of-weights")))),
        TauSquaredInterval.valueOf(constant(full.path("tauSquaredInterval").asText("q-profile"))),
        full.get("level").asDouble());
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
