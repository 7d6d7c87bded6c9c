package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.pooling.Model;
import gapwise.problem.Problems;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The priors of a plan whose form and defaults are settled. */
public final class PriorReader {
  /** The square of a smaller standard deviation has no reciprocal among doubles. */
  private static final double LEAST = 1e-100;

  private static final double USUAL_SCALE = 0.5;

  /** These are chosen by simulation, docs/methods/coverage.md. */
  private static final double USUAL_SCALE_OF_COUNTS = 1;

  private static final double USUAL_SCALE_OF_LOG_MEANS = 0.5;

  private static final double USUAL_DEVIATIONS_OF_MEANS = 1;

  /**
   * Standard deviation of a log ratio that lies within a factor of 250 with a probability of 95 %
   * (Günhan, Röver and Friede, Res Synth Methods 2020;11:74).
   */
  private static final double USUAL_OF_RATIOS = 2.82;

  /** True values so far apart that no series of patients could tell them from farther. */
  private static final double GREATEST_OF_COUNTS = 10;

  private static final Set<String> LIKELIHOODS = Set.of("normal", "exact");

  /**
   * What a prior of the middle study may be called with counts of one group; the usual one first.
   */
  private static final Map<String, List<String>> OF_ONE_GROUP =
      Map.of(
          "proportion", List.of("uniform"),
          "incidence-rate", List.of("jeffreys", "uniform"));

  private PriorReader() {}

  /** The model a checked plan asks for. */
  public static Model model(ObjectNode full, PoolingSettings settings) {
    return ExactModels.areCounts(full)
        ? BayesianCountsModel.of(full, settings)
        : BayesianModel.of(full, settings);
  }

  /** Fills in what the plan leaves out. */
  public static void fill(Filling plan) {
    plan.text("likelihood", "normal");
    boolean counts = ExactModels.areCounts(plan.full());
    JsonNode asked = plan.given().path("prior");
    ObjectNode prior = plan.full().putObject("prior");
    prior.set("mean", asked.has("mean") ? asked.get("mean") : usualMean(plan, counts));
    if (asked.has("tau")) {
      prior.set("tau", asked.get("tau"));
    } else if (areInTheirUnit(plan.full())) {
      prior.putObject("tau").put(AskedPrior.InDeviations.WORD, USUAL_DEVIATIONS_OF_MEANS);
    } else {
      prior.putObject("tau").put("halfNormal", usualScale(plan, counts));
    }
  }

  private static double usualScale(Filling plan, boolean counts) {
    return counts
        ? USUAL_SCALE_OF_COUNTS
        : plan.is("measure", "mean") ? USUAL_SCALE_OF_LOG_MEANS : USUAL_SCALE;
  }

  /** Whether effects are means, or differences of them, in the unit of the data. */
  private static boolean areInTheirUnit(ObjectNode plan) {
    String measure = plan.path("measure").asText();
    return measure.equals("mean-difference")
        || (measure.equals("mean") && plan.path("scale").asText().equals("raw"));
  }

  private static JsonNode usualMean(Filling plan, boolean counts) {
    JsonNodeFactory nodes = JsonNodeFactory.instance;
    if (!counts) {
      return nodes.textNode("flat");
    }
    List<String> words = ofOneGroup(plan.text("measure"));
    if (!words.isEmpty()) {
      return nodes.textNode(words.get(0));
    }
    ObjectNode normal = nodes.objectNode();
    normal.putArray("normal").add(0).add(USUAL_OF_RATIOS);
    return normal;
  }

  /** The prior of the middle study of counts. */
  static CentrePrior centre(String measure, JsonNode mean) {
    JsonNode normal = mean.path("normal");
    if (!normal.isMissingNode()) {
      return new CentrePrior.Normal(normal.get(0).asDouble(), normal.get(1).asDouble());
    }
    if (mean.asText().equals("jeffreys")) {
      return new CentrePrior.JeffreysRate();
    }
    return measure.equals("proportion")
        ? new CentrePrior.UniformShare()
        : new CentrePrior.UniformRate();
  }

  private static List<String> ofOneGroup(String measure) {
    return OF_ONE_GROUP.getOrDefault(measure, List.of());
  }

  static MeanPrior mean(JsonNode mean) {
    JsonNode normal = mean.path("normal");
    return normal.isMissingNode()
        ? MeanPrior.FLAT
        : MeanPrior.normal(normal.get(0).asDouble(), normal.get(1).asDouble());
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
  public static void check(ObjectNode plan, Problems problems) {
    if (plan.path("model").asText().equals("bayesian")) {
      checkTogether(plan, problems);
    }
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
    checkTau(plan, plan.path("prior").path("tau"), "prior.tau", problems);
    JsonNode others = plan.path("priorSensitivity");
    for (int i = 0; i < others.size(); i++) {
      checkTau(plan, others.get(i), "priorSensitivity[" + i + "]", problems);
    }
  }

  /** Notes priors that do not go with the likelihood. */
  private static void checkTogether(ObjectNode plan, Problems problems) {
    String likelihood = plan.path("likelihood").asText();
    if (!LIKELIHOODS.contains(likelihood)) {
      problems.add(
          "likelihood",
          "model-not-for-measure",
          "'" + likelihood + "' is for 'exact-likelihood'; 'bayesian' has 'normal' and 'exact'");
    }
    JsonNode mean = plan.path("prior").path("mean");
    if (!ExactModels.areCounts(plan)) {
      if (mean.isTextual() && !mean.asText().equals("flat")) {
        problems.add(
            "prior.mean",
            "prior-not-for-likelihood",
            "'"
                + mean.asText()
                + "' is for counts by their exact likelihood; take 'flat' here, or 'likelihood':"
                + " 'exact'");
      }
      return;
    }
    ExactModels.checkCounts(plan, problems);
    List<String> words = ofOneGroup(plan.path("measure").asText());
    if (mean.isTextual() && !words.contains(mean.asText())) {
      problems.add(
          "prior.mean",
          "prior-not-for-likelihood",
          "'"
              + mean.asText()
              + "' is no prior of the middle study of this measure where every study may lie at a"
              + " limit; take "
              + words.stream().map(word -> "'" + word + "' or ").collect(Collectors.joining())
              + "{\"normal\": [mean, standard deviation]}");
    }
    checkTauOfCounts(plan.path("prior").path("tau"), "prior.tau", problems);
    for (int i = 0; i < plan.path("priorSensitivity").size(); i++) {
      checkTauOfCounts(
          plan.path("priorSensitivity").get(i), "priorSensitivity[" + i + "]", problems);
    }
  }

  private static void checkTauOfCounts(JsonNode asked, String where, Problems problems) {
    JsonNode range = asked.path("uniform");
    double reach =
        range.isMissingNode() ? asked.path("halfNormal").asDouble() : range.get(1).asDouble();
    boolean ends = asked.has("halfNormal") || asked.has("uniform");
    if (!ends || !(reach > 0 && reach <= GREATEST_OF_COUNTS)) {
      problems.add(
          where,
          "prior-not-for-likelihood",
          "with an exact likelihood tau has a half-normal prior with a scale, or a uniform one with"
              + " an end, above 0 and not above "
              + GREATEST_OF_COUNTS
              + ", since studies without events, or with only events, do not rule out any spread");
    }
  }

  /** Notes values of probabilities that nothing shown can have. */
  public static void checkProbabilities(JsonNode plan, Problems problems) {
    AskedProbability.check(plan, problems);
  }

  private static void checkTau(ObjectNode plan, JsonNode tau, String where, Problems problems) {
    if (tau.has(AskedPrior.InDeviations.WORD) && !areInTheirUnit(plan)) {
      problems.add(
          where,
          "prior-not-for-measure",
          "'"
              + AskedPrior.InDeviations.WORD
              + "' is for means and their differences in the unit of the data; take"
              + " {\"halfNormal\": scale} here, on the analysis scale");
    }
    JsonNode range = tau.path("uniform");
    if (!range.isMissingNode() && !(range.get(0).asDouble() < range.get(1).asDouble())) {
      problems.add(
          where + ".uniform",
          "out-of-range",
          "found " + range + ", expected the lower end of the range before the upper");
    }
  }
}
