package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.bayes.Marginal;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TrueEffect;
import gapwise.synthesis.pooling.EffectSample;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The posterior of Bayesian random effects. */
final class BayesianPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return plan.json().path("model").asText().equals("bayesian");
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    EffectSample sample = synthesis.studies().sample();
    if (sample.size() == 0) {
      return;
    }
    JsonNode plan = synthesis.plan().json();
    Priors priors = PriorReader.read(plan.path("prior"));
    Posterior posterior = Posterior.of(sample, priors);
    if (posterior instanceof Posterior.None none) {
      tell(List.of(none.why()), warnings);
      return;
    }
    Proper proper = (Proper) posterior;
    tell(proper.warnings(), warnings);
    Words words =
        new Words(
            synthesis.plan().settings().level(),
            synthesis.measure().shown(synthesis.studies().pooledData()));
    Optional<Marginal> predictive = proper.predictive();
    result.bayesian(
        new BayesianResult(
            words.effect(proper.mean()),
            proper.tau().map(words::tau),
            predictive.map(words::effect),
            studies(proper.studies(), synthesis.studies()),
            words.probabilities(plan.path("probabilities"), proper.mean(), predictive),
            words.sensitivity(plan.path("priorSensitivity"), sample, priors)));
  }

  /** Adds what pooling has not told already. */
  private static void tell(List<Problem> problems, List<Result.Warning> warnings) {
    for (Result.Warning warning : StudyWarnings.of(problems)) {
      if (warnings.stream().noneMatch(one -> one.code().equals(warning.code()))) {
        warnings.add(warning);
      }
    }
  }

  private static List<BayesianResult.Study> studies(List<TrueEffect> effects, Studies<?> studies) {
    List<BayesianResult.Study> told = new ArrayList<>();
    for (int i = 0; i < effects.size(); i++) {
      told.add(
          new BayesianResult.Study(
              studies.pooled().get(i).label(), effects.get(i).mean(), effects.get(i).sd()));
    }
    return told;
  }

  /** Posteriors in the form of a result. */
  private record Words(double level, BackTransform back) {
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

    private BayesianResult.Shown shown(Marginal marginal) {
      Interval limits = marginal.equalTailed(level);
      return new BayesianResult.Shown(
          back.apply(marginal.median()), back.apply(limits.lower()), back.apply(limits.upper()));
    }

    Optional<List<BayesianResult.Probability>> probabilities(
        JsonNode asked, Marginal mean, Optional<Marginal> predictive) {
      return Optional.empty();
    }

    Optional<List<BayesianResult.Sensitivity>> sensitivity(
        JsonNode asked, EffectSample sample, Priors priors) {
      return Optional.empty();
    }
  }
}
