package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.EmptyCells;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.MeasureOptions.Pooling;
import gapwise.effect.Measures;
import gapwise.effect.MedianConversion;
import gapwise.effect.MultiArmMeasures;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.RankDraws;
import gapwise.synthesis.pooling.CountPooling;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.pooling.TauSquaredEstimators;
import gapwise.synthesis.pooling.TauSquaredInterval;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** From JSON to a checked plan. */
final class PlanReader {
  private PlanReader() {}

  /**
   * Reads a plan.
   *
   * @throws WrongInputException with everything that is wrong with it
   */
  static Plan read(JsonNode json) {
    List<Problem> beyond = FiniteNumbers.check(json);
    if (!beyond.isEmpty()) {
      throw new WrongInputException(beyond);
    }
    List<Problem> form = PlanSchema.check(json);
    if (!form.isEmpty()) {
      throw new WrongInputException(form);
    }
    ObjectNode full = PlanDefaults.fill((ObjectNode) json);
    List<Problem> sense = PlanRules.check(full);
    if (!sense.isEmpty()) {
      throw new WrongInputException(sense);
    }
    return switch (full.get("task").asText()) {
      case "interval" -> intervals(full);
      case "convert" -> conversions(full);
      case "agreement" -> agreement(full);
      case "multiverse" -> multiverse(full);
      case "reconstruct-curve" -> CurvePlan.of(full, columns(full));
      case "survival" -> SurvivalPlan.of(full, columns(full));
      case "trial" -> TrialPlan.of(full, columns(full));
      case "patients-with-summaries" -> PatientsPlan.of(full, columns(full));
      default -> full.get("model").asText().equals("network") ? network(full) : synthesis(full);
    };
  }

  private static Plan intervals(ObjectNode full) {
    return new IntervalPlan(
        full,
        full.get("measure").asText(),
        columns(full),
        texts(full.get("methods")),
        full.get("pooledCounts").asBoolean(),
        full.get("level").asDouble());
  }

  private static Plan conversions(ObjectNode full) {
    return new ConvertPlan(
        full,
        columns(full),
        texts(full.get("methods")).stream()
            .map(word -> MedianConversion.valueOf(constant(word)))
            .toList());
  }

  private static Plan agreement(ObjectNode full) {
    return new AgreementPlan(
        full,
        columns(full),
        texts(full.get("statistics")),
        texts(full.path("raters")),
        texts(full.path("categories")),
        full.path("multiplier").asDouble(1.96),
        full.get("level").asDouble());
  }

  private static Plan multiverse(ObjectNode full) {
    return new MultiversePlan(
        full, synthesis(MultiversePlan.synthesis(full, Map.of())), Vary.of(full));
  }

  /** The plan of a synthesis whose defaults are filled in. */
  static SynthesisPlan synthesis(ObjectNode full) {
    String measure = full.get("measure").asText();
    return new SynthesisPlan(
        full,
        measure,
        columns(full),
        measure(full, measure),
        settings(full),
        full.path("pooling").asText().equals("mantel-haenszel")
            ? CountPooling.mantelHaenszel(measure)
            : Optional.empty(),
        Optional.ofNullable(full.get("subgroup")).map(JsonNode::asText),
        full.path("subgroupVariance").asText().equals("common"));
  }

  private static Plan network(ObjectNode full) {
    String measure = full.get("measure").asText();
    boolean contrasts = measure.equals(NetworkRules.CONTRASTS);
    boolean common = full.get("networkEffects").asText().equals("common");
    return new NetworkPlan(
        full,
        measure,
        columns(full),
        MultiArmMeasures.named(measure, options(full, measure)),
        contrasts ? Optional.of(Measures.reported(options(full, measure))) : Optional.empty(),
        new NetworkSettings(
            common
                ? Optional.empty()
                : TauSquaredEstimators.named(full.get("betweenStudyVariance").asText()),
            TauSquaredInterval.valueOf(
                constant(full.path("tauSquaredInterval").asText("q-profile"))),
            full.get("level").asDouble()),
        Optional.ofNullable(full.get("reference")).map(JsonNode::asText),
        full.get("better").asText().equals("higher"),
        new RankDraws(full.get("seed").asLong(), full.get("rankingDraws").asInt()));
  }

  private static Measure<?> measure(ObjectNode full, String measure) {
    return Measures.named(measure, options(full, measure)).orElseThrow();
  }

  private static MeasureOptions options(ObjectNode full, String measure) {
    JsonNode n = full.path("backTransformN");
    JsonNode correction = full.path("continuityCorrection");
    EmptyCells emptyCells =
        new EmptyCells(
            correction.path("amount").asDouble(EmptyCells.USUAL.amount()),
            EmptyCells.Tables.valueOf(
                constant(correction.path("tables").asText(EmptyCells.USUAL.tables().word()))),
            EmptyCells.UninformativeStudies.valueOf(
                constant(
                    full.path("uninformativeStudies")
                        .asText(EmptyCells.USUAL.uninformative().word()))));
    List<Double> also = new ArrayList<>();
    full.path("backTransformAlsoWith").forEach(one -> also.add(one.asDouble()));
    return new MeasureOptions(
        full.path("scale").asText(Measures.scales(measure).get(0)),
        emptyCells,
        n.isNumber() ? OptionalDouble.of(n.asDouble()) : OptionalDouble.empty(),
        also,
        full.path("smallSampleCorrection").asText("exact").equals("exact"),
        full.path("standardisedVariance").asText().equals("factor-squared"),
        full.path("reportedAs").asText().equals("ratio"),
        full.get("level").asDouble(),
        switch (ExactModels.asked(full) ? "exact" : full.path("pooling").asText()) {
          case "mantel-haenszel", "exact" -> Pooling.COUNTS;
          case "peto" -> Pooling.PETO;
          default -> Pooling.INVERSE_VARIANCE;
        });
  }

  private static PoolingSettings settings(ObjectNode full) {
    boolean random = full.get("model").asText().equals("random-effects");
    return new PoolingSettings(
        random
            ? TauSquaredEstimators.named(full.get("betweenStudyVariance").asText())
            : Optional.empty(),
        MeanIntervals.named(full.get("interval").asText()).orElse(MeanIntervals.normal()),
        new Prediction(
            Prediction.Reference.valueOf(
                constant(full.path("predictionInterval").asText("t-k-minus-2"))),
            Prediction.Error.valueOf(
                constant(full.path("predictionStandardError").asText("sum-of-weights")))),
        TauSquaredInterval.valueOf(constant(full.path("tauSquaredInterval").asText("q-profile"))),
        full.get("level").asDouble());
  }

  private static Map<String, String> columns(ObjectNode full) {
    Map<String, String> columns = new LinkedHashMap<>();
    full.path("columns")
        .fields()
        .forEachRemaining(field -> columns.put(field.getKey(), field.getValue().asText()));
    return columns;
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(text -> texts.add(text.asText()));
    return texts;
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
