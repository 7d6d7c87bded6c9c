package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import java.util.Optional;

/**
 * Standard error times the root of q, t on k - p, q not cut at 1: Hartung and Knapp, Stat Med
 * 2001;20:3875; Sidik and Jonkman, Stat Med 2002;21:3153.
 */
final class HartungKnapp implements MeanInterval {
  @Override
  public String name() {
    return "hartung-knapp";
  }

  @Override
  public String label() {
    return "Hartung-Knapp interval";
  }

  @Override
  public PooledMean around(WeightedMean mean, double level) {
    return PooledMean.symmetric(
        mean.estimate(),
        mean.hartungKnappStandardError(),
        ReferenceDistribution.studentT(mean.residualDegreesOfFreedom()),
        level);
  }

  /** Narrower than the normal interval of the model: chance alone made the residuals so small. */
  @Override
  public Optional<Problem> caution(WeightedMean mean, double level) {
    double own =
        ReferenceDistribution.studentT(mean.residualDegreesOfFreedom()).multiplier(level)
            * mean.hartungKnappStandardError();
    double ofModel = ReferenceDistribution.normal().multiplier(level) * mean.standardError();
    return own < ofModel
        ? Optional.of(
            new Problem("", "interval-narrower-than-model", say("analysis.narrower-than-model")))
        : Optional.empty();
  }
}
