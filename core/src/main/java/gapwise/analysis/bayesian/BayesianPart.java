package gapwise.analysis.bayesian;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.bayes.Marginal;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TrueEffect;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The posterior of Bayesian random effects.
 *
 * @param probabilities how likely true values lie above or below a value shown
 * @param sensitivity other priors of tau under which the mean is told
 */
public record BayesianPart(List<AskedProbability> probabilities, List<AskedPrior> sensitivity) {
  public BayesianPart {
    probabilities = List.copyOf(probabilities);
    sensitivity = List.copyOf(sensitivity);
  }

  /** What a checked plan asks of a posterior. */
  public static BayesianPart of(JsonNode full) {
    List<AskedProbability> probabilities = new ArrayList<>();
    full.path("probabilities").forEach(one -> probabilities.add(AskedProbability.of(one)));
    List<AskedPrior> sensitivity = new ArrayList<>();
    full.path("priorSensitivity").forEach(one -> sensitivity.add(AskedPrior.of(one)));
    return new BayesianPart(probabilities, sensitivity);
  }

  /**
   * Works it out for all studies; empty where there is no posterior.
   *
   * @param warnings takes what a reader must know
   */
  public <D extends StudyData> Optional<BayesianResult> of(
      Synthesis<D> synthesis, List<Result.Warning> warnings) {
    int studies = synthesis.studies().pooled().size();
    if (synthesis.plan().model() instanceof BayesianModel model && studies > 0) {
      unit(synthesis.plan(), model.tau(), warnings);
    }
    return at(synthesis, IntStream.range(0, studies).boxed().toList(), warnings);
  }

  /** The same for one group, whose warnings are told when it is pooled. */
  public <D extends StudyData> Optional<BayesianResult> ofGroup(
      Synthesis<D> synthesis, String level) {
    return at(synthesis, synthesis.studies().placesOf(level), new ArrayList<>());
  }

  private <D extends StudyData> Optional<BayesianResult> at(
      Synthesis<D> synthesis, List<Integer> places, List<Result.Warning> warnings) {
    if (places.isEmpty()) {
      return Optional.empty();
    }
    if (synthesis.pooler() instanceof OfCounts counts) {
      return counts
          .kept(places)
          .map(known -> ofCounts(words(synthesis, places), counts, places, known));
    }
    return synthesis.pooler() instanceof OfPosteriors effects
        ? ofEffects(synthesis, effects, places, warnings)
        : Optional.empty();
  }

  private <D extends StudyData> Optional<BayesianResult> ofEffects(
      Synthesis<D> synthesis,
      OfPosteriors effects,
      List<Integer> places,
      List<Result.Warning> warnings) {
    Posterior posterior = effects.posterior(places, effects.model().tau());
    if (posterior instanceof Posterior.None none) {
      tell(List.of(none.why()), warnings);
      return Optional.empty();
    }
    Proper proper = (Proper) posterior;
    tell(proper.warnings(), warnings);
    PosteriorWords words = words(synthesis, places);
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    Optional<Marginal> predictive = proper.predictive();
    Optional<Marginal> average = effects.averageOf(proper);
    return Optional.of(
        new BayesianResult(
            words.effect(proper.mean()),
            proper.tau().map(words::tau),
            predictive.map(words::effect),
            average.map(words::shown),
            Optional.of(studies(proper.studies(), places.stream().map(pooled::get).toList())),
            probabilities(words.back(), proper.mean(), predictive, average),
            sensitivity(words, effects, places, warnings),
            effects.model().tau().scale(places.stream().map(effects.data()::get).toList())));
  }

  private BayesianResult ofCounts(
      PosteriorWords words, OfCounts counts, List<Integer> places, OfCounts.Known known) {
    return new BayesianResult(
        words.effect(known.centre()),
        Optional.of(words.tau(known.tau())),
        Optional.of(words.effect(known.predictive())),
        known.average().map(words::shown),
        Optional.empty(),
        probabilities(
            words.back(), known.centre(), Optional.of(known.predictive()), known.average()),
        sensitivity(words, counts, places, known),
        OptionalDouble.empty());
  }

  private static <D extends StudyData> PosteriorWords words(
      Synthesis<D> synthesis, List<Integer> places) {
    List<D> data = synthesis.studies().pooledData();
    return new PosteriorWords(
        synthesis.plan().level(),
        synthesis.measure().shown(places.stream().map(data::get).toList()));
  }

  /** Reminds of the unit of tau where effects have one. */
  private static void unit(PoolingPlan plan, AskedPrior tau, List<Result.Warning> warnings) {
    boolean withUnit =
        plan.measure().equals("mean-difference")
            || (plan.measure().equals("mean") && plan.scale().equals("raw"));
    if (withUnit && tau.hasScale()) {
      warnings.add(
          Result.Warning.of(
              "prior-has-a-unit",
              say("analysis.prior-has-a-unit", Map.of("prior", tau.told().toString()))));
    }
  }

  private Optional<List<BayesianResult.Probability>> probabilities(
      BackTransform back,
      Marginal mean,
      Optional<Marginal> predictive,
      Optional<Marginal> average) {
    return probabilities.isEmpty()
        ? Optional.empty()
        : Optional.of(
            probabilities.stream()
                .map(one -> one.answer(back, mean, predictive, average))
                .toList());
  }

  private Optional<List<BayesianResult.Sensitivity>> sensitivity(
      PosteriorWords words, OfCounts counts, List<Integer> places, OfCounts.Known known) {
    List<BayesianResult.Sensitivity> others = new ArrayList<>();
    for (AskedPrior tau : sensitivity) {
      others.add(
          counts
              .under(tau, places, known)
              .map(
                  other ->
                      words.under(
                          tau.told(), other.centre(), counts.averageOf(other).map(words::shown)))
              .orElseGet(() -> untold(tau)));
    }
    return others.isEmpty() ? Optional.empty() : Optional.of(others);
  }

  private Optional<List<BayesianResult.Sensitivity>> sensitivity(
      PosteriorWords words,
      OfPosteriors effects,
      List<Integer> places,
      List<Result.Warning> warnings) {
    List<BayesianResult.Sensitivity> told = new ArrayList<>();
    for (AskedPrior tau : sensitivity) {
      Work.check();
      Posterior other = effects.posterior(places, tau);
      if (other instanceof Posterior.None none) {
        tell(List.of(none.why()), warnings);
      }
      told.add(
          other instanceof Proper proper
              ? words.under(tau.told(), proper.mean(), effects.averageOf(proper).map(words::shown))
              : untold(tau));
    }
    return told.isEmpty() ? Optional.empty() : Optional.of(told);
  }

  private static BayesianResult.Sensitivity untold(AskedPrior tau) {
    return new BayesianResult.Sensitivity(
        tau.told(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** Adds what pooling has not told already. */
  private static void tell(List<Problem> problems, List<Result.Warning> warnings) {
    for (Problem problem : problems) {
      Result.Warning warning = Result.Warning.of(problem);
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
}
