package gapwise.analysis.pooling;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.problem.Problems;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import java.util.List;
import java.util.Set;

/**
 * The model {@code exact-likelihood} in a plan: its defaults, what it may ask, which likelihood.
 */
public final class ExactModels {
  private static final Set<String> MEASURES =
      Set.of("proportion", "incidence-rate", "odds-ratio", "incidence-rate-ratio");

  /** The limits by Student's t; the contract of plans knows normal ones only. */
  private static final String STUDENT_T = "t-k-minus-1";

  /** The test of moderators by Student's t and F; another model has none of this name. */
  public static final String MODERATORS_BY_STUDENT_T = "t-k-minus-p";

  /** The likelihood of shares with a beta distribution. */
  private static final String BETA_BINOMIAL = "beta-binomial";

  /** The prediction interval between quantiles of the fitted beta distribution. */
  private static final String FITTED_BETA = "fitted-beta";

  private ExactModels() {}

  /** Whether a plan asks for it. */
  public static boolean asked(ObjectNode plan) {
    return plan.path("model").asText().equals(ExactModel.WORD);
  }

  /** Whether a plan takes counts as they are, nothing added to empty cells, by any model. */
  public static boolean areCounts(ObjectNode plan) {
    return asked(plan)
        || isNetwork(plan)
        || (plan.path("model").asText().equals("bayesian")
            && plan.path("likelihood").asText().equals("exact"));
  }

  /** Whether a plan takes a network of counts by their exact likelihood. */
  public static boolean isNetwork(ObjectNode plan) {
    return plan.path("model").asText().equals("network")
        && plan.path("likelihood").asText().equals("conditional");
  }

  /** Whether a plan takes true shares to have a beta distribution. */
  public static boolean isBetaBinomial(ObjectNode plan) {
    return asked(plan) && plan.path("likelihood").asText().equals(BETA_BINOMIAL);
  }

  /** Whether integrals are worked out at points. */
  public static boolean hasPoints(ObjectNode plan) {
    return asked(plan) && !isBetaBinomial(plan);
  }

  private static boolean measures(ObjectNode plan, String measure) {
    return plan.path("measure").asText().equals(measure);
  }

  /** The exact likelihood of a measure that has one, of two groups given their margins. */
  public static ExactLikelihood.Model given(String measure) {
    return switch (measure) {
      case "proportion" -> ExactLikelihood.Model.PROPORTION;
      case "incidence-rate" -> ExactLikelihood.Model.RATE;
      case "incidence-rate-ratio" -> ExactLikelihood.Model.RATE_RATIO;
      default -> ExactLikelihood.Model.ODDS_RATIO_CONDITIONAL;
    };
  }

  /** Whether a measure has an exact likelihood. */
  public static boolean take(String measure) {
    return MEASURES.contains(measure);
  }

  /** Whether {@code likelihood} has a bearing. */
  public static boolean hasTwoGroups(ObjectNode plan) {
    return asked(plan) && (measures(plan, "odds-ratio") || measures(plan, "incidence-rate-ratio"));
  }

  /** Whether {@code armSpread} has a bearing. */
  public static boolean hasArmSpread(ObjectNode plan) {
    return hasTwoGroups(plan) && plan.path("likelihood").asText().equals("unconditional");
  }

  /** Fills in what the plan leaves out. */
  public static void fill(Filling plan) {
    if (hasTwoGroups(plan.full())) {
      plan.text("likelihood", "conditional");
    }
    if (hasArmSpread(plan.full())) {
      plan.text("armSpread", "larger-with-intervention");
    }
    boolean beta = isBetaBinomial(plan.full());
    if (!beta) {
      plan.whole("quadraturePoints", 25);
    }
    if (plan.given().has("places")) {
      plan.text("predictionInterval", beta ? FITTED_BETA : Prediction.Reference.T_K_MINUS_2.word());
    }
  }

  /** What does not go together. */
  public static void check(ObjectNode plan, Problems problems) {
    checkCounts(plan, problems);
    String likelihood = plan.path("likelihood").asText();
    if (measures(plan, "incidence-rate-ratio") && likelihood.equals("unconditional")) {
      problems.add(
          "likelihood",
          "model-not-for-measure",
          "the unconditional likelihood is for odds ratios; rate ratios have 'conditional', given"
              + " the events of both groups");
    }
    if (likelihood.equals(BETA_BINOMIAL) && !measures(plan, "proportion")) {
      problems.add(
          "likelihood",
          "model-not-for-measure",
          "'beta-binomial' is for shares of single groups, the measure 'proportion'; found '"
              + plan.path("measure").asText()
              + "'");
    }
    if (likelihood.equals("normal") || likelihood.equals("exact")) {
      problems.add(
          "likelihood",
          "model-not-for-measure",
          "'"
              + likelihood
              + "' is for the model 'bayesian'; 'exact-likelihood' has 'conditional' and"
              + " 'unconditional' for two groups, and 'beta-binomial' for shares of single ones");
    }
  }

  /** Notes a prediction interval that is not that of the distribution of true values. */
  public static void checkPrediction(ObjectNode plan, Problems problems) {
    String interval = plan.path("predictionInterval").asText();
    boolean beta = isBetaBinomial(plan);
    if (!interval.isEmpty() && beta != interval.equals(FITTED_BETA)) {
      problems.add(
          "predictionInterval",
          "interval-not-for-model",
          beta
              ? "'"
                  + interval
                  + "' is for true values with a normal distribution; with 'beta-binomial' take"
                  + " 'fitted-beta'"
              : "'fitted-beta' goes with 'exact-likelihood' and the likelihood 'beta-binomial';"
                  + " take another");
    }
  }

  /** What does not go with moderators. */
  public static void checkModerators(ObjectNode plan, Problems problems) {
    String test = plan.path("moderatorTest").asText();
    if (!test.equals("normal") && !test.equals(MODERATORS_BY_STUDENT_T)) {
      problems.add(
          "moderatorTest",
          "interval-not-for-model",
          "'"
              + test
              + "' goes with another model; with 'exact-likelihood' moderators are tested by"
              + " 'normal' or '"
              + MODERATORS_BY_STUDENT_T
              + "'");
    }
    if (plan.path("likelihood").asText().equals("unconditional")) {
      problems.add(
          "likelihood",
          "part-not-for-model",
          "the unconditional likelihood has an intercept a study, which moderators do not go with"
              + " here; take 'conditional'");
    }
    if (isBetaBinomial(plan)) {
      problems.add(
          "likelihood",
          "part-not-for-model",
          "moderators explain the logit of shares that are normal about a line, not those of"
              + " 'beta-binomial'; leave 'likelihood' out");
    }
    if (plan.has("permutationTest")) {
      problems.add(
          "permutationTest",
          "part-not-for-model",
          "moderators are exchanged between effects and their variances, which the exact likelihood"
              + " does without; ask it of 'random-effects'");
    }
  }

  /** What no model of counts as they are can take. */
  public static void checkCounts(ObjectNode plan, Problems problems) {
    if (!MEASURES.contains(plan.path("measure").asText())) {
      problems.add(
          "model",
          "model-not-for-measure",
          "an exact likelihood needs counts whose distribution is known; there is none here for '"
              + plan.path("measure").asText()
              + "'");
    }
    parts(plan, problems);
    String scale = plan.path("scale").asText();
    boolean right =
        measures(plan, "proportion")
            ? scale.equals("logit")
            : !measures(plan, "incidence-rate") || scale.equals("log");
    if (!right) {
      problems.add(
          "scale",
          "scale-not-for-model",
          "an exact likelihood has its pooled value on the "
              + (measures(plan, "proportion") ? "logit" : "log")
              + " scale; found '"
              + scale
              + "', leave it out");
    }
  }

  /** Parts that need an effect and a variance of each study, which empty cells may not give. */
  private static void parts(ObjectNode plan, Problems problems) {
    for (String field : List.of("robustVariance", "smallStudyEffects")) {
      if (plan.has(field) && plan.get(field).size() + plan.get(field).asText().length() > 0) {
        problems.add(
            field,
            "part-not-for-model",
            "'"
                + field
                + "' needs an effect of each study, which the exact likelihood does without; ask it"
                + " of 'random-effects'");
      }
    }
  }

  /** Whether the model has an interval of this name. */
  public static boolean has(String interval) {
    return interval.equals("normal") || interval.equals(STUDENT_T);
  }

  /** The model a checked plan asks for. */
  public static Model of(ObjectNode full, PoolingSettings settings) {
    if (isBetaBinomial(full)) {
      return new BetaBinomialModel(limits(full), full.has("predictionInterval"), settings);
    }
    String measure = full.get("measure").asText();
    ExactLikelihood.Model model = measure.equals("odds-ratio") ? oddsRatio(full) : given(measure);
    return new ExactModel(
        new ExactLikelihood(model, full.get("quadraturePoints").asInt()), limits(full), settings);
  }

  /** With moderators limits are those of their test. */
  private static LikelihoodLimits limits(ObjectNode full) {
    return new LikelihoodLimits(
        full.get("level").asDouble(),
        full.has("moderators")
            ? full.path("moderatorTest").asText().equals(MODERATORS_BY_STUDENT_T)
            : full.get("interval").asText().equals(STUDENT_T),
        Prediction.Reference.named(full.path("predictionInterval").asText()));
  }

  private static ExactLikelihood.Model oddsRatio(ObjectNode full) {
    if (full.get("likelihood").asText().equals("conditional")) {
      return ExactLikelihood.Model.ODDS_RATIO_CONDITIONAL;
    }
    return full.get("armSpread").asText().equals("equal")
        ? ExactLikelihood.Model.ODDS_RATIO_HALF
        : ExactLikelihood.Model.ODDS_RATIO_ZERO_ONE;
  }
}
