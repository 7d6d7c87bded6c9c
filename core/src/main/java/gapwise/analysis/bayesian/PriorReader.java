package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.problem.Problems;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.pooling.PoolingSettings;

/** The priors of a plan whose form and defaults are settled. */
public final class PriorReader {
  /** The square of a smaller standard deviation has no reciprocal among doubles. */
  private static final double LEAST = 1e-100;

  private static final double USUAL_SCALE = 0.5;

  private PriorReader() {}

  /** The model a checked plan asks for. */
  public static BayesianModel model(JsonNode full, PoolingSettings settings) {
    return new BayesianModel(
        read(full.path("prior")), AskedPrior.of(full.path("prior").path("tau")), settings);
  }

  /** Fills in what the plan leaves out. */
  public static void fill(Filling plan) {
    JsonNode asked = plan.given().path("prior");
    ObjectNode prior = plan.full().putObject("prior");
    prior.set(
        "mean", asked.has("mean") ? asked.get("mean") : JsonNodeFactory.instance.textNode("flat"));
    if (asked.has("tau")) {
      prior.set("tau", asked.get("tau"));
    } else {
      prior.putObject("tau").put("halfNormal", USUAL_SCALE);
    }
  }

  private static Priors read(JsonNode prior) {
    JsonNode normal = prior.path("mean").path("normal");
    return new Priors(
        normal.isMissingNode()
            ? MeanPrior.FLAT
            : MeanPrior.normal(normal.get(0).asDouble(), normal.get(1).asDouble()),
        tau(prior.path("tau")));
  }

  static TauPrior tau(JsonNode tau) {
    if (tau.has("halfNormal")) {
      return new TauPrior.HalfNormal(tau.get("halfNormal").asDouble());
    }
    if (tau.has("halfCauchy")) {
      return new TauPrior.HalfCauchy(tau.get("halfCauchy").asDouble());
    }
    if (tau.has("uniform")) {
      JsonNode range = tau.get("uniform");
      return new TauPrior.Uniform(range.get(0).asDouble(), range.get(1).asDouble());
    }
    return new TauPrior.Flat();
  }

  /** Notes what no prior can be. */
  public static void check(JsonNode plan, Problems problems) {
    JsonNode normal = plan.path("prior").path("mean").path("normal");
    if (!normal.isMissingNode() && !(normal.get(1).asDouble() >= LEAST)) {
      problems.add(
          "prior.mean.normal[1]",
          "out-of-range",
          "found "
              + normal.get(1)
              + ", expected the standard deviation of the prior, above 0 and not below "
              + LEAST
              + "; or say \"flat\"");
    }
    checkTau(plan.path("prior").path("tau"), "prior.tau", problems);
    JsonNode others = plan.path("priorSensitivity");
    for (int i = 0; i < others.size(); i++) {
      checkTau(others.get(i), "priorSensitivity[" + i + "]", problems);
    }
  }

  /** Notes values of probabilities that nothing shown can have. */
  public static void checkProbabilities(JsonNode plan, Problems problems) {
    AskedProbability.check(plan, problems);
  }

  private static void checkTau(JsonNode tau, String where, Problems problems) {
    JsonNode range = tau.path("uniform");
    if (!range.isMissingNode() && !(range.get(0).asDouble() < range.get(1).asDouble())) {
      problems.add(
          where + ".uniform",
          "out-of-range",
          "found " + range + ", expected the lower end of the range before the upper");
    }
  }
}
