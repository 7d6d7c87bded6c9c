package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.ExactModels;
import gapwise.effect.Measures;
import gapwise.figure.value.Quantity;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.pooling.MeanInterval;
import gapwise.synthesis.pooling.MeanIntervals;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A filled plan in words: its measure for the axis, its model for the foot. */
public final class ModelWords {
  private static final Map<String, String> MODELS =
      Map.of(
          "random-effects", "random effects",
          "common-effect", "common effect",
          "exact-likelihood", "exact likelihood",
          "three-level", "three-level",
          "bayesian", "Bayesian",
          "network", "network");

  /** Limits that models of counts and of clusters have beside those of pooled effects. */
  private static final Map<String, String> OTHER_INTERVALS =
      Map.of(
          "t-k-minus-1", "interval by Student's t",
          "t-clusters", "interval by Student's t on clusters");

  private ModelWords() {}

  static Quantity measure(ObjectNode plan, String unit) {
    return switch (plan.path("measure").asText()) {
      case "proportion" -> Quantity.of100();
      case "risk-difference" -> Quantity.differenceOf100();
      case "odds-ratio", "risk-ratio", "ratio-of-means", "incidence-rate-ratio" -> Quantity.ratio();
      case "mean", "incidence-rate" -> Quantity.mean(unit);
      case "reported-effect" ->
          plan.path("reportedAs").asText().equals("ratio")
              ? Quantity.ratio()
              : Quantity.difference(unit);
      default -> Quantity.difference(unit);
    };
  }

  /** Model, scale, estimator and interval of a filled plan, as one phrase. */
  public static String model(ObjectNode plan) {
    List<String> words = new ArrayList<>();
    String model = plan.path("model").asText("random-effects");
    boolean bayesian = model.equals("bayesian");
    words.add(
        bayesian && plan.path("likelihood").asText().equals("exact")
            ? say("answer.model-exact-bayesian")
            : ExactModels.isNetwork(plan)
                ? say("answer.model-exact-network")
                : MODELS.getOrDefault(model, model));
    if (plan.has("scale")) {
      String scale = plan.get("scale").asText();
      words.add(
          say("answer.model-scale", Map.of("scale", Measures.scaleLabel(scale).orElse(scale))));
    }
    String estimator =
        ExactModels.isNetwork(plan) ? "" : plan.path("betweenStudyVariance").asText();
    if (!estimator.isEmpty()) {
      words.add(say("answer.model-variance", Map.of("estimator", estimator(estimator))));
    }
    JsonNode halfNormal = plan.path("prior").path("tau").path("halfNormal");
    if (halfNormal.isNumber()) {
      words.add(
          say("answer.model-half-normal", Map.of("scale", Told.number(halfNormal.asDouble()))));
    }
    String interval = plan.path("interval").asText();
    if (!interval.isEmpty() && !bayesian) {
      words.add(interval(interval));
    }
    return String.join(", ", words);
  }

  private static String estimator(String word) {
    return TauSquaredEstimators.named(word).map(TauSquaredEstimator::label).orElse(word);
  }

  private static String interval(String word) {
    return MeanIntervals.named(word)
        .map(MeanInterval::label)
        .orElseGet(() -> OTHER_INTERVALS.getOrDefault(word, word));
  }

  /** What people call the measure of a filled plan; blank where it names none. */
  static String measureLabel(ObjectNode plan) {
    String measure = plan.path("measure").asText();
    return Measures.label(measure).orElse(measure);
  }
}
