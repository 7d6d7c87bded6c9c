package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.pooling.ExactModels;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A posterior: its likelihood, its priors, and what was told of it. */
final class BayesianWords {
  /** Standard deviation of the usual prior of log ratios, as docs/methods/bayesian.md gives it. */
  private static final double USUAL_OF_RATIOS = 2.82;

  /** Scales of the half-normal prior that are advised for log ratios of few studies. */
  private static final Set<Double> ADVISED_FOR_RATIOS = Set.of(0.5, 1.0);

  private static final Set<String> RATIOS = Set.of("odds-ratio", "incidence-rate-ratio");

  private final Telling telling;
  private final Settings settings;
  private final Optional<BayesianResult> made;

  /**
   * @param made what came of it; empty where nothing but the priors is told
   */
  BayesianWords(Telling telling, Settings settings, Optional<BayesianResult> made) {
    this.telling = telling;
    this.settings = settings;
    this.made = made;
  }

  void tell() {
    boolean counts = ExactModels.areCounts(settings.plan());
    telling.say(counts ? "bayesian.exact." + settings.word("measure") : "bayesian.normal");
    priors();
    telling.say("bayesian.integration");
    telling.say("bayesian.interval", Map.of("percent", settings.percent()));
    made.ifPresent(
        posterior -> {
          telling.say(
              posterior.predictive().isPresent() ? "bayesian.predictive" : "bayesian.no-spread");
          if (posterior.average().isPresent()) {
            telling.say("bayesian.average");
          }
        });
    asked();
  }

  /** What is believed before the studies. */
  void priors() {
    boolean counts = ExactModels.areCounts(settings.plan());
    mean();
    JsonNode tau = settings.part("prior").path("tau");
    boolean ofRatios =
        counts
            && settings.is("measure", "odds-ratio")
            && tau.has("halfNormal")
            && ADVISED_FOR_RATIOS.contains(tau.get("halfNormal").asDouble());
    telling.say(ofRatios ? "prior-tau.of-ratios" : "prior-tau", Map.of("prior", tau(tau)));
  }

  private void mean() {
    JsonNode mean = settings.part("prior").path("mean");
    JsonNode normal = mean.path("normal");
    if (normal.isMissingNode()) {
      telling.say(
          switch (mean.asText()) {
            case "uniform" -> "prior-mean.uniform." + settings.word("measure");
            case "jeffreys" -> "prior-mean.jeffreys";
            default -> "prior-mean.flat";
          });
    } else if (RATIOS.contains(settings.word("measure"))
        && normal.get(0).asDouble() == 0
        && normal.get(1).asDouble() == USUAL_OF_RATIOS) {
      telling.say("prior-mean.normal-of-ratios");
    } else {
      telling.say(
          "prior-mean.normal",
          Map.of(
              "centre", Settings.number(normal.get(0)), "spread", Settings.number(normal.get(1))));
    }
  }

  private String tau(JsonNode tau) {
    if (tau.has("halfNormal")) {
      return scaled("tau.half-normal", tau.get("halfNormal"));
    }
    if (tau.has("halfNormalOfStandardDeviation")) {
      return scaled("tau.half-normal-of-deviation", tau.get("halfNormalOfStandardDeviation"));
    }
    if (tau.has("halfCauchy")) {
      return scaled("tau.half-cauchy", tau.get("halfCauchy"));
    }
    JsonNode range = tau.path("uniform");
    return range.isMissingNode()
        ? telling.phrase("tau.flat")
        : telling.phrase(
            "tau.uniform",
            Map.of("from", Settings.number(range.get(0)), "to", Settings.number(range.get(1))));
  }

  private String scaled(String name, JsonNode scale) {
    return telling.phrase(name, Map.of("scale", Settings.number(scale)));
  }

  private void asked() {
    for (JsonNode one : settings.part("probabilities")) {
      String side = one.has("above") ? "above" : "below";
      telling.say("probability." + side, Map.of("value", Settings.number(one.get(side))));
    }
    JsonNode others = settings.part("priorSensitivity");
    if (others.size() > 0) {
      telling.say(
          "sensitivity", Map.of("list", Settings.joinLong(others.valueStream().map(this::tau))));
    }
  }
}
