package gapwise.synthesis.likelihood;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.effect.TwoRates;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.heterogeneity.UnknownSpread;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Pooling of counts by their own likelihood. Studies that say nothing add nothing. A single study
 * gives its own effect, whatever the model.
 */
public final class ExactLikelihood {
  /** Which counts, and what is held fixed. */
  public enum Model {
    /** Events among patients of single groups. */
    PROPORTION,
    /** Events over person-time of single groups. */
    RATE,
    /** Fourfold tables given their margins. */
    ODDS_RATIO_CONDITIONAL,
    /** Fourfold tables with an intercept a study, groups coded 0 and 1. */
    ODDS_RATIO_ZERO_ONE,
    /** Fourfold tables with an intercept a study, groups coded -1/2 and 1/2. */
    ODDS_RATIO_HALF,
    /** Events over person-time of two groups, given the events of both. */
    RATE_RATIO
  }

  private final Model model;
  private final int points;

  /**
   * @param points of the adaptive quadrature, 1 (Laplace) to 200
   */
  public ExactLikelihood(Model model, int points) {
    this.model = model;
    this.points = points;
  }

  /**
   * Pools.
   *
   * @param studies counts of the kind the model has
   * @param limits how its interval is made
   */
  public Pooled pool(List<? extends StudyData> studies, LikelihoodLimits limits) {
    List<? extends StudyData> told = studies.stream().filter(ExactLikelihood::tells).toList();
    LikelihoodFit fit = fit(told);
    if (fit instanceof LikelihoodFit.NoMaximum none) {
      return Pooled.without(Heterogeneity.UNKNOWN, WhyNoTop.of(model, none.reason(), studies));
    }
    LikelihoodFit.Estimate top = (LikelihoodFit.Estimate) fit;
    if (told.size() == 1) {
      return single(
          told.get(0), studies.size(), top.estimate(), top.standardError(), limits.level());
    }
    List<Double> shares = shares(model, studies, top.estimate(), top.tau());
    if (!limits.isSpreadUnknown()) {
      return pooled(
          top, limits.mean(top, told.size()), limits.further(top, told.size()), shares, List.of());
    }
    StudyLikelihoods likelihoods = likelihoods(told);
    Optional<Interval> further =
        UnknownTauOfCounts.further(likelihoods, top, points)
            .map(one -> one.interval(limits.level()));
    return pooled(
        top,
        limits.mean(top, told.size()),
        further,
        shares,
        further.isPresent() ? List.of() : List.of(missing(likelihoods)));
  }

  /**
   * Where the true value of a further study lies with tau not taken as known; empty where studies
   * are too few or too many.
   *
   * @param studies that can be pooled
   */
  public Optional<UnknownSpread.Further> further(List<? extends StudyData> studies) {
    List<? extends StudyData> told = studies.stream().filter(ExactLikelihood::tells).toList();
    return told.size() > 1 && fit(told) instanceof LikelihoodFit.Estimate top
        ? UnknownTauOfCounts.further(likelihoods(told), top, points)
        : Optional.empty();
  }

  private static Problem missing(StudyLikelihoods likelihoods) {
    return UnknownTauOfCounts.isTold(likelihoods)
        ? new Problem("", "prediction-left-out", say("analysis.further-study-left-out"))
        : new Problem("", "too-few-studies", say("analysis.no-unknown-spread-of-counts"));
  }

  private StudyLikelihoods likelihoods(List<? extends StudyData> told) {
    boolean half = model == Model.ODDS_RATIO_HALF;
    return half || model == Model.ODDS_RATIO_ZERO_ONE
        ? FourfoldNormal.withIntercepts(told.stream().map(TwoByTwo.class::cast).toList(), half)
        : StudyLikelihoods.of(model, told);
  }

  /**
   * Explains the same counts by moderators; for models without an intercept a study.
   *
   * @param design a row for each study
   */
  public CountRegression regression(
      List<? extends StudyData> studies, DesignMatrix design, LikelihoodLimits limits) {
    return CountRegression.of(model, studies, design, points, limits);
  }

  private LikelihoodFit fit(List<? extends StudyData> studies) {
    return switch (model) {
      case PROPORTION -> {
        List<ArmCounts> arms = studies.stream().map(ArmCounts.class::cast).toList();
        yield BinomialNormal.fit(
            column(arms, ArmCounts::events), column(arms, ArmCounts::total), points);
      }
      case RATE -> {
        List<ArmRate> arms = studies.stream().map(ArmRate.class::cast).toList();
        yield PoissonNormal.fit(
            column(arms, ArmRate::events), column(arms, ArmRate::personTime), points);
      }
      case RATE_RATIO -> {
        List<TwoRates> arms = studies.stream().map(TwoRates.class::cast).toList();
        yield RateRatioNormal.fit(
            column(arms, a -> a.intervention().events()),
            column(arms, a -> a.intervention().personTime()),
            column(arms, a -> a.comparator().events()),
            column(arms, a -> a.comparator().personTime()),
            points);
      }
      default -> tables(studies.stream().map(TwoByTwo.class::cast).toList());
    };
  }

  private LikelihoodFit tables(List<TwoByTwo> tables) {
    double[] events = column(tables, t -> t.intervention().events());
    double[] totals = column(tables, t -> t.intervention().total());
    double[] otherEvents = column(tables, t -> t.comparator().events());
    double[] otherTotals = column(tables, t -> t.comparator().total());
    return model == Model.ODDS_RATIO_CONDITIONAL
        ? FourfoldNormal.conditional(events, totals, otherEvents, otherTotals, points)
        : FourfoldNormal.unconditional(
            events, totals, otherEvents, otherTotals, model == Model.ODDS_RATIO_HALF, points);
  }

  private static <D> double[] column(List<? extends D> studies, ToDoubleFunction<D> number) {
    return studies.stream().mapToDouble(number).toArray();
  }

  /** Whether a study says anything of what is pooled. */
  public static boolean tells(StudyData study) {
    if (study instanceof TwoByTwo table) {
      return table.eventTotal() > 0 && table.nonEventTotal() > 0;
    }
    return !(study instanceof TwoRates rates) || rates.eventTotal() > 0;
  }

  private static Pooled pooled(
      LikelihoodFit.Estimate top,
      PooledMean mean,
      Optional<Interval> further,
      List<Double> shares,
      List<Problem> more) {
    List<Problem> warnings = warnings(top.points(), top.converged());
    warnings.addAll(more);
    if (top.tau() == 0) {
      warnings.add(
          0,
          new Problem(
              "", "between-study-variance-at-zero", say("analysis.likelihood-variance-at-zero")));
    }
    return new Pooled(
        Optional.of(mean),
        further,
        Heterogeneity.ofSpread(top.tau()),
        shares,
        OptionalDouble.of(top.standardError()),
        Optional.of(new Pooled.Likelihood(top.logLikelihood(), false, top.converged())),
        warnings);
  }

  /** What a reader must know of a search; may be added to. */
  static List<Problem> warnings(LikelihoodFit.Points points, boolean settled) {
    List<Problem> warnings = new ArrayList<>();
    if (points == LikelihoodFit.Points.REFINED) {
      warnings.add(new Problem("", "quadrature-refined", say("analysis.quadrature-refined")));
    } else if (points == LikelihoodFit.Points.TOO_COARSE) {
      warnings.add(new Problem("", "quadrature-too-coarse", say("analysis.quadrature-too-coarse")));
    }
    if (!settled) {
      warnings.add(new Problem("", "did-not-converge", say("analysis.likelihood-did-not-settle")));
    }
    return warnings;
  }

  /**
   * Share of each single group in the information: the reciprocal of tau squared and the variance
   * that a group of its size has at the pooled value. An approximation, to draw by; the likelihood
   * itself has no weights. Empty for two groups.
   *
   * @param centre on the analysis scale
   */
  public static List<Double> shares(
      Model model, List<? extends StudyData> studies, double centre, double tau) {
    return shares(model, studies, Collections.nCopies(studies.size(), centre), tau);
  }

  /** The same with a centre for each study. */
  static List<Double> shares(
      Model model, List<? extends StudyData> studies, List<Double> centres, double tau) {
    if (model != Model.PROPORTION && model != Model.RATE) {
      return List.of();
    }
    double[] information = new double[studies.size()];
    double sum = 0;
    for (int i = 0; i < information.length; i++) {
      double centre = centres.get(i);
      double share = 1 / (1 + Math.exp(-centre));
      double own =
          studies.get(i) instanceof ArmCounts arm
              ? arm.total() * share * (1 - share)
              : ((ArmRate) studies.get(i)).personTime() * Math.exp(centre);
      information[i] = 1 / (tau * tau + 1 / own);
      sum += information[i];
    }
    scale(information, 1 / sum);
    return Double.isFinite(sum) && sum > 0
        ? Arrays.stream(information).boxed().toList()
        : List.of();
  }

  private static void scale(double[] numbers, double factor) {
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] *= factor;
    }
  }

  /**
   * A study's own effect; the conditional likelihood of one table has its top elsewhere.
   *
   * @param studies how many there are with those that say nothing, beside which no share is told
   */
  static Pooled single(StudyData study, int studies, double top, double errorAtTop, double level) {
    double estimate = top;
    double error = errorAtTop;
    if (study instanceof TwoByTwo table) {
      ArmCounts i = table.intervention();
      ArmCounts c = table.comparator();
      estimate = Math.log(i.events() / i.nonEvents()) - Math.log(c.events() / c.nonEvents());
      error = Math.sqrt(1 / i.events() + 1 / i.nonEvents() + 1 / c.events() + 1 / c.nonEvents());
    }
    return new Pooled(
        Optional.of(PooledMean.symmetric(estimate, error, ReferenceDistribution.normal(), level)),
        Optional.empty(),
        Heterogeneity.OF_ONE_STUDY,
        studies == 1 ? List.of(1.0) : List.of(),
        OptionalDouble.of(error),
        Optional.empty(),
        List.of(new Problem("", "single-study", say("analysis.one-study-says-anything"))));
  }
}
