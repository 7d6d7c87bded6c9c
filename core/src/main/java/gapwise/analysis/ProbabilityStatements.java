package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.problem.Problems;
import gapwise.synthesis.bayes.Marginal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The field {@code probabilities}: how likely true values lie above or below a value shown. */
final class ProbabilityStatements {
  private ProbabilityStatements() {}

  /** Notes values that nothing shown can have. */
  static void check(JsonNode plan, Problems problems) {
    JsonNode asked = plan.path("probabilities");
    for (int i = 0; i < asked.size(); i++) {
      String side = side(asked.get(i));
      ShownValue.check(
          plan, asked.get(i).get(side).asDouble(), "probabilities[" + i + "]." + side, problems);
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
      Work.check();
      double shown = one.get(side(one)).asDouble();
      double value = ShownValue.onAnalysisScale(shown, back);
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
}
