package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.rows.SelectionRows;
import gapwise.answer.Told;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.selection.Question;
import java.util.Map;

/** How two methods are set against each other for an outcome. */
enum Effect {
  ODDS_RATIO("odds-ratio"),
  RATE_RATIO("incidence-rate-ratio"),
  RATIO_OF_MEANS("ratio-of-means"),
  MEAN_DIFFERENCE("mean-difference");

  private final String measure;

  Effect(String measure) {
    this.measure = measure;
  }

  /** The measure of two groups in a plan. */
  String measure() {
    return measure;
  }

  /**
   * Shares of patients by odds, events of which a patient can have several by rates, what the usual
   * plan takes on the log scale by ratios.
   *
   * @param question with the form of counting that its rows are in
   */
  static Effect of(Question question) {
    String measure = SelectionRows.measure(question);
    if (!measure.equals("mean")) {
      return measure.equals("proportion") ? ODDS_RATIO : RATE_RATIO;
    }
    String scale =
        QuestionPlan.of(question, "", false).map(plan -> plan.path("scale").asText()).orElse("raw");
    return scale.equals("log") ? RATIO_OF_MEANS : MEAN_DIFFERENCE;
  }

  /** Whether studies are pooled from their counts, which needs no variance of each. */
  boolean isFromCounts() {
    return this == ODDS_RATIO || this == RATE_RATIO;
  }

  /** The value that says no difference, as people read it. */
  double none() {
    return this == MEAN_DIFFERENCE ? 0 : 1;
  }

  /** From the analysis scale to what people read. */
  double shown(double value) {
    return this == MEAN_DIFFERENCE ? value : Math.exp(value);
  }

  Quantity figure(Outcome outcome) {
    return this == MEAN_DIFFERENCE
        ? Quantity.difference(outcome.unit().map(Unit::symbol).orElse(""))
        : Quantity.ratio();
  }

  /** Adds how such effects are pooled over studies. */
  void pool(ObjectNode plan) {
    plan.put("measure", measure);
    if (isFromCounts()) {
      plan.put("model", "bayesian");
      plan.put("likelihood", "exact");
      ArrayNode others = plan.putArray("priorSensitivity");
      others.addObject().put("halfNormal", 0.5);
      others.addObject().put("halfNormal", 2);
    } else {
      plan.put("interval", "hartung-knapp-never-narrower");
    }
  }

  /** Such as "1.9 (0.4 to 9.2)". */
  String withLimits(Outcome outcome, BayesianResult.Shown shown) {
    return Told.withLimits(
        figure(outcome), Estimate.of(shown.median(), shown.lower(), shown.upper()));
  }

  /**
   * Such as "the odds after bone transport were 1.9 times those after autograft (95 % interval 0.4
   * to 9.2)".
   */
  String words(
      Outcome outcome, String first, String second, double estimate, double lower, double upper) {
    Quantity measure = figure(outcome);
    String value = Shown.value(measure, estimate);
    String limits = Shown.limits(measure, new Limits(lower, upper));
    boolean endless = lower < 0.01 && upper > 100;
    return switch (this) {
      case ODDS_RATIO ->
          say(
              endless ? "claim.odds-endless" : "claim.odds",
              Map.of("first", first, "second", second, "ratio", value, "limits", limits));
      case RATE_RATIO ->
          say(
              endless ? "claim.rate-ratio-endless" : "claim.rate-ratio",
              Map.of("first", first, "second", second, "ratio", value, "limits", limits));
      case RATIO_OF_MEANS ->
          say(
              endless ? "claim.ratio-of-means-endless" : "claim.ratio-of-means",
              Map.of("first", first, "second", second, "ratio", value, "limits", limits));
      case MEAN_DIFFERENCE ->
          say(
              "claim.difference-of-means",
              Map.of(
                  "first",
                  first,
                  "second",
                  second,
                  "difference",
                  (value + " " + measure.unit()).stripTrailing(),
                  "limits",
                  limits));
    };
  }
}
