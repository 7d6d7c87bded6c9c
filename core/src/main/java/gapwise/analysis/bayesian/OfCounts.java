package gapwise.analysis.bayesian;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.Pooler;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.Marginal;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.likelihood.MeanOverStudies;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Pools counts by their posterior: of the middle study, of tau and of a further study medians stand
 * for estimates and equal-tailed limits for intervals; for shares and rates the average over
 * studies has its own posterior. One study keeps its own result, if it has one.
 */
final class OfCounts implements Pooler {
  /** Points of the quadrature that gives one study its own value; more change nothing. */
  private static final int POINTS = 25;

  private final BayesianCountsModel model;
  private final List<? extends StudyData> studies;

  /** Those that several parts of a result are told from: of all studies, and of each group. */
  private final Map<List<Integer>, Optional<Known>> kept = new ConcurrentHashMap<>();

  /** A posterior and what is told of it, each worked out once. */
  record Known(
      CountsPosterior posterior,
      Marginal centre,
      Marginal tau,
      Marginal predictive,
      Optional<Marginal> average) {}

  OfCounts(BayesianCountsModel model, List<? extends StudyData> studies) {
    this.model = model;
    this.studies = List.copyOf(studies);
  }

  @Override
  public int size() {
    return studies.size();
  }

  @Override
  public Pooled at(List<Integer> places) {
    return pooled(places, this::known);
  }

  @Override
  public Pooled all() {
    return pooled(IntStream.range(0, size()).boxed().toList(), this::kept);
  }

  /** Groups have posteriors of their own; no test compares them. */
  @Override
  public Subgroups subgroups(List<String> levels, boolean common) {
    return Subgroups.untested(levels, places -> pooled(places, this::kept));
  }

  @Override
  public Optional<Further> further(List<Integer> places, Pooled pooled) {
    return telling(places).size() < 2
        ? Optional.empty()
        : kept(places).map(known -> known.predictive()::below);
  }

  /** The posterior of studies at some places, worked out once. */
  Optional<Known> kept(List<Integer> places) {
    return kept.computeIfAbsent(List.copyOf(places), this::known);
  }

  private Optional<Known> known(List<Integer> places) {
    return posterior(places)
        .map(
            posterior ->
                new Known(
                    posterior,
                    posterior.centre(),
                    posterior.tau(),
                    posterior.predictive(),
                    averageOf(posterior)));
  }

  /** Empty if no study says something, or no number is it. */
  private Optional<CountsPosterior> posterior(List<Integer> places) {
    List<? extends StudyData> told = telling(places);
    return told.isEmpty()
        ? Optional.empty()
        : prior(model.tau(), told)
            .flatMap(
                prior ->
                    CountsPosterior.of(
                        MarginalLikelihood.of(model.counts(), told), model.centre(), prior));
  }

  /** What is known of studies at some places, under another prior of tau; empty if no number is. */
  Optional<CountsPosterior> under(AskedPrior tau, List<Integer> places, Known known) {
    return prior(tau, telling(places)).flatMap(known.posterior()::under);
  }

  /** Empty if the posterior is well no distribution under it. */
  private Optional<TauPrior> prior(AskedPrior tau, List<? extends StudyData> told) {
    return tau.of(told).filter(prior -> model.centre().isProper(prior, told.size()));
  }

  /** Those of the studies at some places that say something. */
  private List<? extends StudyData> telling(List<Integer> places) {
    return places.stream().map(studies::get).filter(ExactLikelihood::tells).toList();
  }

  private Pooled pooled(List<Integer> places, Function<List<Integer>, Optional<Known>> posteriors) {
    List<? extends StudyData> some = places.stream().map(studies::get).toList();
    if (telling(places).size() < 2) {
      return new ExactLikelihood(model.counts(), POINTS)
          .pool(some, LikelihoodLimits.normal(level()));
    }
    return posteriors
        .apply(places)
        .map(known -> pooled(known, some))
        .orElseGet(() -> Pooled.without(Heterogeneity.UNKNOWN, without(telling(places).size())));
  }

  private Problem without(int count) {
    return model.tau().of(studies).filter(tau -> model.centre().isProper(tau, count)).isPresent()
        ? new Problem("", "number-out-of-range", say("analysis.posterior-out-of-range"))
        : new Problem(
            "",
            "improper-posterior",
            say("analysis.posterior-of-rates-improper", Map.of("studies", count)));
  }

  private Pooled pooled(Known known, List<? extends StudyData> some) {
    Marginal tau = known.tau();
    Marginal centre = known.centre();
    double middle = centre.median();
    Pooled pooled =
        new Pooled(
            Optional.of(
                new PooledMean(
                    middle,
                    centre.sd().orElseThrow(),
                    centre.equalTailed(level()),
                    OptionalDouble.empty(),
                    OptionalInt.empty(),
                    OptionalDouble.empty())),
            Optional.of(known.predictive().equalTailed(level())),
            Heterogeneity.ofSpread(tau.median(), tau.equalTailed(level())),
            ExactLikelihood.shares(model.counts(), some, middle, tau.median()),
            centre.sd(),
            Optional.empty(),
            List.of());
    return known.average().map(this::shown).map(pooled::with).orElse(pooled);
  }

  private double level() {
    return model.settings().level();
  }

  private Pooled.Average shown(Marginal average) {
    Interval limits = average.equalTailed(level());
    return new Pooled.Average(
        back(average.median()), new Interval(back(limits.lower()), back(limits.upper())));
  }

  /**
   * The average over studies on the scale of the link; a mean of ratios would hang on which group
   * comes first.
   */
  Optional<Marginal> averageOf(CountsPosterior posterior) {
    return switch (model.counts()) {
      case PROPORTION -> Optional.of(posterior.average(MeanOverStudies::logitOfProportion));
      case RATE -> Optional.of(posterior.average((centre, tau) -> centre + tau * tau / 2));
      default -> Optional.empty();
    };
  }

  private double back(double linked) {
    DoubleUnaryOperator back =
        model.counts() == ExactLikelihood.Model.PROPORTION
            ? logit -> 1 / (1 + Math.exp(-logit))
            : Math::exp;
    return back.applyAsDouble(linked);
  }
}
