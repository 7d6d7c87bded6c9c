package gapwise.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.figure.value.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A filled plan in words: its measure for the axis, its model for the foot. */
public final class ModelWords {
  private static final Map<String, String> ESTIMATORS =
      Map.of(
          "restricted-maximum-likelihood", "between-study variance by restricted likelihood",
          "dersimonian-laird", "between-study variance by DerSimonian and Laird",
          "paule-mandel", "between-study variance by Paule and Mandel");
  private static final Map<String, String> INTERVALS =
      Map.of(
          "hartung-knapp", "Hartung-Knapp interval",
          "hartung-knapp-never-narrower", "Hartung-Knapp interval, never narrower",
          "normal", "normal interval",
          "profile-likelihood", "profile-likelihood interval",
          "t-k-minus-1", "interval by Student's t");

  private ModelWords() {}

  static Measure measure(ObjectNode plan, String unit) {
    return switch (plan.path("measure").asText()) {
      case "proportion" -> Measure.of100();
      case "risk-difference" -> Measure.differenceOf100();
      case "odds-ratio", "risk-ratio", "ratio-of-means", "incidence-rate-ratio" -> Measure.ratio();
      case "mean", "incidence-rate" -> Measure.mean(unit);
      case "reported-effect" ->
          plan.path("reportedAs").asText().equals("ratio")
              ? Measure.ratio()
              : Measure.difference(unit);
      default -> Measure.difference(unit);
    };
  }

  /** Model, scale, estimator and interval of a filled plan, as one phrase. */
  public static String model(ObjectNode plan) {
    List<String> words = new ArrayList<>();
    words.add(plan.path("model").asText("random-effects").replace('-', ' '));
    if (plan.has("scale")) {
      words.add(plan.get("scale").asText().replace('-', ' ') + " scale");
    }
    String estimator = plan.path("betweenStudyVariance").asText();
    if (!estimator.isEmpty()) {
      words.add(ESTIMATORS.getOrDefault(estimator, estimator.replace('-', ' ')));
    }
    String interval = plan.path("interval").asText();
    if (!interval.isEmpty()) {
      words.add(INTERVALS.getOrDefault(interval, interval.replace('-', ' ')));
    }
    return String.join(", ", words);
  }
}
