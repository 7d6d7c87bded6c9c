package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Iterator;
import java.util.Map;
import java.util.Set;

/**
 * The settings of plans that this version declares to do. A bound plan counts as covered if all its
 * settings are here; whether the tool then takes the plan is for the tests to find out.
 */
final class SupportedSettings {
  /** Fields that take any value of their form. */
  private static final Set<String> ANY =
      Set.of(
          "source",
          "columns",
          "title",
          "level",
          "zeroCells",
          "subgroup",
          "statistics",
          "raters",
          "categories",
          "weights",
          "multiplier",
          "cumulativeBy",
          "backTransformN",
          "backTransformAlsoWith",
          "methods",
          "pooledCounts");

  private static final Map<String, Set<String>> VALUES =
      Map.ofEntries(
          Map.entry("task", Set.of("synthesis", "interval", "convert", "agreement")),
          Map.entry(
              "measure",
              Set.of(
                  "proportion",
                  "odds-ratio",
                  "risk-ratio",
                  "risk-difference",
                  "mean",
                  "mean-difference",
                  "standardised-mean-difference",
                  "ratio-of-means",
                  "incidence-rate",
                  "incidence-rate-ratio",
                  "reported-effect")),
          Map.entry("smallSampleCorrection", Set.of("exact", "approximate")),
          Map.entry("standardisedVariance", Set.of("corrected-effect", "factor-squared")),
          Map.entry("reportedAs", Set.of("analysis-scale", "ratio")),
          Map.entry(
              "scale", Set.of("logit", "double-arcsine", "arcsine", "log", "raw", "square-root")),
          Map.entry("model", Set.of("random-effects", "common-effect")),
          Map.entry("pooling", Set.of("inverse-variance", "mantel-haenszel", "peto")),
          Map.entry(
              "betweenStudyVariance",
              Set.of(
                  "restricted-maximum-likelihood",
                  "maximum-likelihood",
                  "dersimonian-laird",
                  "two-step-dersimonian-laird",
                  "paule-mandel",
                  "empirical-bayes",
                  "hunter-schmidt",
                  "sidik-jonkman",
                  "hedges")),
          Map.entry(
              "interval",
              Set.of(
                  "hartung-knapp", "hartung-knapp-never-narrower", "normal", "profile-likelihood")),
          Map.entry("predictionInterval", Set.of("t-k-minus-2", "t-k-minus-1", "normal")),
          Map.entry("predictionStandardError", Set.of("sum-of-weights", "hartung-knapp")),
          Map.entry("tauSquaredInterval", Set.of("q-profile", "profile-likelihood")),
          Map.entry("subgroupVariance", Set.of("separate", "common")),
          Map.entry("influence", Set.of("false", "true")));

  private SupportedSettings() {}

  static boolean cover(JsonNode plan) {
    for (Iterator<Map.Entry<String, JsonNode>> fields = plan.fields(); fields.hasNext(); ) {
      Map.Entry<String, JsonNode> field = fields.next();
      boolean any = ANY.contains(field.getKey());
      if (!any
          && !VALUES.getOrDefault(field.getKey(), Set.of()).contains(field.getValue().asText())) {
        return false;
      }
    }
    return true;
  }
}
