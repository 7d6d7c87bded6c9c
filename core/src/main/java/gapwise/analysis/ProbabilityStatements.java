package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.BackTransform;
import gapwise.numeric.BracketedRoot;
import gapwise.problem.Problems;
import gapwise.synthesis.bayes.Marginal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The field {@code probabilities}: how likely true values lie above or below a value shown. */
final class ProbabilityStatements {
  /** Measures whose shown values are all above 0. */
  private static final Set<String> ABOVE_ZERO =
      Set.of(
          "odds-ratio", "risk-ratio", "ratio-of-means", "incidence-rate", "incidence-rate-ratio");

  private ProbabilityStatements() {}

  /** Notes values that nothing shown can have. */
  static void check(JsonNode plan, Problems problems) {
    JsonNode asked = plan.path("probabilities");
    String measure = plan.path("measure").asText();
    boolean positive =
        ABOVE_ZERO.contains(measure)
            || plan.path("reportedAs").asText().equals("ratio")
            || (measure.equals("mean") && plan.path("scale").asText().equals("log"));
    for (int i = 0; i < asked.size(); i++) {
      String side = side(asked.get(i));
      double value = asked.get(i).get(side).asDouble();
      String where = "probabilities[" + i + "]." + side;
      if (measure.equals("proportion") && !(value > 0 && value < 1)) {
        problems.add(
            where,
            "out-of-range",
            "found " + value + ", expected a proportion between 0 and 1, such as 0.9 for 90 %");
      } else if (positive && !(value > 0)) {
        problems.add(
            where,
            "out-of-range",
            "found " + value + ", expected a value above 0, as this measure has");
      }
    }
  }

  /** The answers; empty if nothing is asked. */
  static Optional<List<BayesianResult.Probability>> of(
      JsonNode asked, BackTransform back, Marginal mean, Optional<Marginal> predictive) {
    if (asked.isEmpty()) {
      return Optional.empty();
    }
    List<BayesianResult.Probability> answers = new ArrayList<>();
    for (JsonNode one : asked) {
      double shown = one.get(side(one)).asDouble();
      double value = onAnalysisScale(shown, back);
      boolean above = one.has("above");
      OptionalDouble none = OptionalDouble.empty();
      answers.add(
          new BayesianResult.Probability(
              above ? OptionalDouble.of(shown) : none,
              above ? none : OptionalDouble.of(shown),
              above ? mean.above(value) : mean.below(value),
              predictive
                  .map(p -> OptionalDouble.of(above ? p.above(value) : p.below(value)))
                  .orElse(none)));
    }
    return Optional.of(answers);
  }

  private static String side(JsonNode one) {
    return one.has("above") ? "above" : "below";
  }

  /**
   * The value that is carried back to the one shown. The way back never falls, so doubled steps
   * find a bracket, or reach where doubles end.
   */
  private static double onAnalysisScale(double shown, BackTransform back) {
    double lower = -1;
    double upper = 1;
    while (back.apply(lower) > shown && lower > -Double.MAX_VALUE / 2) {
      lower *= 2;
    }
    while (back.apply(upper) < shown && upper < Double.MAX_VALUE / 2) {
      upper *= 2;
    }
    double atLower = back.apply(lower) - shown;
    double atUpper = back.apply(upper) - shown;
    if (!BracketedRoot.brackets(atLower, atUpper)) {
      return atUpper < 0 ? upper : lower;
    }
    return BracketedRoot.find(x -> back.apply(x) - shown, lower, upper).value();
  }
}
