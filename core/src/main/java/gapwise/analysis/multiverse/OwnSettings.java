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
    String model, String scale, String emptyCells, String estimator, String interval) {

  /** The interval with which pages tell rates by their exact likelihood. */
  static final String EXACT_INTERVAL_OF_PAGES = "t-k-minus-1";

  /**
   * What pages show for the measure of a plan: shares and ratios of counts by the posterior of
   * their exact likelihood, means by the posterior of random effects, rates by their exact
   * likelihood alone, all else by random effects on the scale of the plan.
   */
  static OwnSettings ofPages(ObjectNode base) {
    String measure = base.path("measure").asText();
    if (measure.equals("incidence-rate")) {
      return new OwnSettings("exact-likelihood", "", "", "", EXACT_INTERVAL_OF_PAGES);
    }
    if (measure.equals("mean") || ExactModels.take(measure)) {
      return new OwnSettings("bayesian", "", "", "", "");
    }
    return new OwnSettings(
        "random-effects",
        base.path("scale").asText(),
        SynthesisDefaults.usesContinuityCorrection(base) ? AskedCells.of(base).words() : "",
        TauSquaredEstimators.all().get(0).name(),
        MeanIntervals.usual().name());
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
        random || ExactModels.asked(base) ? base.path("interval").asText() : "");
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
      case MultiverseChoices.MISSING_SPREAD -> MultiverseChoices.LEAVE_OUT;
      default -> choice.levels().get(0);
    };
  }
}
