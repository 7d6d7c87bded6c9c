package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.budget.Work;
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
    return isAskedBy(plan.json());
  }

  /** Whether the model of a plan is this one. */
  static boolean isAskedBy(JsonNode plan) {
    return plan.path("model").asText().equals("bayesian");
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    EffectSample sample = synthesis.studies().sample();
    if (sample.size() == 0) {
      return;
    }
    JsonNode plan = synthesis.plan().json();
    unit(synthesis.plan(), warnings);
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
            studies(proper.studies(), synthesis.studies().pooled()),
            ProbabilityStatements.of(
                plan.path("probabilities"), words.back(), proper.mean(), predictive),
            words.sensitivity(plan.path("priorSensitivity"), sample, priors, warnings)));
  }

  /** Reminds of the unit of tau where effects have one. */
  private static void unit(SynthesisPlan plan, List<Result.Warning> warnings) {
    boolean withUnit =
        plan.measure().equals("mean-difference")
            || (plan.measure().equals("mean") && plan.json().path("scale").asText().equals("raw"));
    JsonNode tau = plan.json().path("prior").path("tau");
    if (withUnit && tau.isObject()) {
      warnings.add(
          Result.Warning.of(
              "prior-has-a-unit",
              "the prior of tau, "
                  + tau
                  + ", is read in the unit of the data; a scale that suits ratios and proportions"
                  + " may hold studies in days, months or centimetres far too close together"));
    }
  }

  /** Adds what pooling has not told already. */
  private static void tell(List<Problem> problems, List<Result.Warning> warnings) {
    for (Result.Warning warning : StudyWarnings.of(problems)) {
      if (warnings.stream().noneMatch(one -> one.code().equals(warning.code()))) {
        warnings.add(warning);
      }
    }
  }

  private static List<BayesianResult.Study> studies(
      List<TrueEffect> effects, List<? extends Studies.Entry<?>> pooled) {
    List<BayesianResult.Study> told = new ArrayList<>();
    for (int i = 0; i < effects.size(); i++) {
      told.add(
          new BayesianResult.Study(
              pooled.get(i).label(), effects.get(i).mean(), effects.get(i).sd()));
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

    Optional<List<BayesianResult.Sensitivity>> sensitivity(
        JsonNode asked, EffectSample sample, Priors priors, List<Result.Warning> warnings) {
      List<BayesianResult.Sensitivity> told = new ArrayList<>();
      for (JsonNode tau : asked) {
        Work.check();
        Posterior other = Posterior.of(sample, new Priors(priors.mean(), PriorReader.tau(tau)));
        if (other instanceof Posterior.None none) {
          tell(List.of(none.why()), warnings);
        }
        told.add(
            other instanceof Proper proper
                ? under(tau, proper.mean())
                : new BayesianResult.Sensitivity(
                    tau,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty()));
      }
      return told.isEmpty() ? Optional.empty() : Optional.of(told);
    }

    private BayesianResult.Sensitivity under(JsonNode tau, Marginal mean) {
      Interval limits = mean.equalTailed(level);
      return new BayesianResult.Sensitivity(
          tau,
          OptionalDouble.of(mean.median()),
          OptionalDouble.of(limits.lower()),
          OptionalDouble.of(limits.upper()),
          Optional.of(shown(mean)));
    }
  }
}
