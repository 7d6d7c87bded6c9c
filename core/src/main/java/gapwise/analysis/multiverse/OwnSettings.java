package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.synthesis.SynthesisDefaults;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.pooling.MeanIntervals;

/**
 * What one analysis that stands out would choose, the plan's own or that of pages, as levels of its
 * choices; empty text where a choice has no meaning for it.
 */
record OwnSettings(
    String model,
    String scale,
    String emptyCells,
    String estimator,
    String interval,
    String moderatorTest,
    String robustVariance) {

  /** The interval with which pages tell rates by their exact likelihood. */
  static final String EXACT_INTERVAL_OF_PAGES = "t-k-minus-1";

  /**
   * What pages show for the measure of a plan: shares and ratios of counts by the posterior of
   * their exact likelihood, means by the posterior of random effects, rates by their exact
   * likelihood alone, all else by random effects on the scale of the plan.
   */
  static OwnSettings ofPages(ObjectNode base) {
    String measure = base.path("measure").asText();
    if (base.has("moderators")) {
      return ofPagesWithModerators(base);
    }
    if (measure.equals("incidence-rate")) {
      return ofCounts("exact-likelihood", EXACT_INTERVAL_OF_PAGES, "");
    }
    if (measure.equals("mean") || ExactModels.take(measure)) {
      return ofCounts("bayesian", "", "");
    }
    return ofEffects(base, MeanIntervals.usual().name(), "");
  }

  /** Pages explain counts by their exact likelihood and all else by random effects. */
  private static OwnSettings ofPagesWithModerators(ObjectNode base) {
    return ExactModels.take(base.path("measure").asText())
        ? ofCounts("exact-likelihood", "", ExactModels.MODERATORS_BY_STUDENT_T)
        : ofEffects(base, "", ModeratorTests.of("random-effects").get(0));
  }

  private static OwnSettings ofCounts(String model, String interval, String test) {
    return new OwnSettings(model, "", "", "", interval, test, "");
  }

  private static OwnSettings ofEffects(ObjectNode base, String interval, String test) {
    return new OwnSettings(
        "random-effects",
        base.path("scale").asText(),
        SynthesisDefaults.usesContinuityCorrection(base) ? AskedCells.of(base).words() : "",
        TauSquaredEstimators.all().get(0).name(),
        interval,
        test,
        Vary.MODELS_OWN);
  }

  /** Reads them from the synthesis in a checked plan. */
  static OwnSettings of(ObjectNode base) {
    String model = base.path("model").asText();
    boolean random = model.equals("random-effects");
    boolean byEffects =
        random
            || (model.equals("common-effect")
                && base.path("pooling").asText().equals("inverse-variance"));
    return new OwnSettings(
        model,
        byEffects ? base.path("scale").asText() : "",
        byEffects && SynthesisDefaults.usesContinuityCorrection(base)
            ? AskedCells.of(base).words()
            : "",
        random ? base.path("betweenStudyVariance").asText() : "",
        random || ExactModels.asked(base) ? base.path("interval").asText() : "",
        ModeratorTests.of(model).isEmpty() || base.has("robustVariance")
            ? ""
            : base.path("moderatorTest").asText(),
        byEffects ? base.path("robustVariance").asText(Vary.MODELS_OWN) : "");
  }

  /** Its settings; they match no analysis if the plan's own choice is not among those varied. */
  Settings among(MultiverseChoices choices) {
    Settings own = choices.none();
    for (Choice choice : choices.all()) {
      own = choices.with(own, choice.name(), level(choice));
    }
    return own;
  }

  private String level(Choice choice) {
    return switch (choice.name()) {
      case MultiverseChoices.MODEL -> model;
      case MultiverseChoices.SCALE -> scale;
      case MultiverseChoices.EMPTY_CELLS -> emptyCells;
      case MultiverseChoices.ESTIMATOR -> estimator;
      case MultiverseChoices.INTERVAL -> interval;
      case MultiverseChoices.MODERATOR_TEST -> moderatorTest;
      case MultiverseChoices.ROBUST_VARIANCE -> robustVariance;
      case MultiverseChoices.MISSING_SPREAD -> MultiverseChoices.LEAVE_OUT;
      default -> choice.levels().get(0);
    };
  }
}
