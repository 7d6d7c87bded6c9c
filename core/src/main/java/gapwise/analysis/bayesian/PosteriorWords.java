package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.synthesis.bayes.Marginal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Posteriors in the form of a result.
 *
 * @param level of limits
 * @param back to what people read
 */
record PosteriorWords(double level, BackTransform back) {
  BayesianResult.Marginal effect(Marginal marginal) {
    return of(marginal, OptionalDouble.of(marginal.below(0)), Optional.of(shown(marginal)));
  }

  BayesianResult.Marginal tau(Marginal marginal) {
    return of(marginal, OptionalDouble.empty(), Optional.empty());
  }

  private BayesianResult.Marginal of(
      Marginal marginal, OptionalDouble belowZero, Optional<BayesianResult.Shown> shown) {
    Interval limits = marginal.equalTailed(level);
    Interval shortest = marginal.shortest(level);
    return new BayesianResult.Marginal(
        marginal.mean(),
        marginal.median(),
        marginal.sd(),
        limits.lower(),
        limits.upper(),
        shortest.lower(),
        shortest.upper(),
        belowZero,
        shown);
  }

  BayesianResult.Shown shown(Marginal marginal) {
    Interval limits = marginal.equalTailed(level);
    return new BayesianResult.Shown(
        back.apply(marginal.median()), back.apply(limits.lower()), back.apply(limits.upper()));
  }

  BayesianResult.Sensitivity under(
      JsonNode tau, Marginal mean, Optional<BayesianResult.Shown> average) {
    Interval limits = mean.equalTailed(level);
    return new BayesianResult.Sensitivity(
        tau,
        OptionalDouble.of(mean.median()),
        OptionalDouble.of(limits.lower()),
        OptionalDouble.of(limits.upper()),
        Optional.of(shown(mean)),
        average);
  }
}
