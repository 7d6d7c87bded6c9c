package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.pooling.ShownValue;
import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.problem.Problems;
import gapwise.synthesis.bayes.Marginal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One entry of the field {@code probabilities}: how likely true values lie on one side of a value.
 *
 * @param value as people read it
 * @param above else below
 */
record AskedProbability(double value, boolean above) {
  private static final String FIELD = "probabilities";

  static AskedProbability of(JsonNode one) {
    return new AskedProbability(one.get(side(one)).asDouble(), one.has("above"));
  }

  /** Notes values that nothing shown can have. */
  static void check(JsonNode plan, Problems problems) {
    JsonNode asked = plan.path(FIELD);
    for (int i = 0; i < asked.size(); i++) {
      String side = side(asked.get(i));
      ShownValue.check(
          plan, asked.get(i).get(side).asDouble(), FIELD + "[" + i + "]." + side, problems);
    }
  }

  private static String side(JsonNode one) {
    return one.has("above") ? "above" : "below";
  }

  /**
   * Answers.
   *
   * @param average on the scale of the link, which is that of the analysis
   */
  BayesianResult.Probability answer(
      BackTransform back,
      Marginal mean,
      Optional<Marginal> predictive,
      Optional<Marginal> average) {
    Work.check();
    double place = ShownValue.onAnalysisScale(value, back);
    OptionalDouble none = OptionalDouble.empty();
    return new BayesianResult.Probability(
        above ? OptionalDouble.of(value) : none,
        above ? none : OptionalDouble.of(value),
        of(mean, place),
        predictive.map(one -> OptionalDouble.of(of(one, place))).orElse(none),
        average.map(one -> OptionalDouble.of(of(one, place))).orElse(none));
  }

  private double of(Marginal marginal, double place) {
    return above ? marginal.above(place) : marginal.below(place);
  }
}
