package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.BackTransform;
import gapwise.effect.EmptyCells;
import gapwise.effect.Interval;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
import gapwise.effect.StudyEffect;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.Marginal;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.likelihood.MeanOverStudies;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** A way of making 95 % intervals for union rates from series of patients. */
enum Way {
  LOGIT_NORMAL("logit, normal") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return logit(drawn.series(), "logit", "normal", Prediction.Reference.NORMAL);
    }
  },
  LOGIT_HARTUNG_KNAPP("logit, Hartung-Knapp") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return logit(drawn.series(), "logit", "hartung-knapp", Prediction.Reference.T_K_MINUS_2);
    }
  },
  LOGIT_NEVER_NARROWER("logit, Hartung-Knapp never narrower") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return logit(
          drawn.series(), "logit", "hartung-knapp-never-narrower", Prediction.Reference.T_K_MINUS_2);
    }
  },
  EXACT_NORMAL("exact likelihood, normal") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return exact(drawn.series(), false, Prediction.Reference.NORMAL);
    }
  },
  EXACT_T("exact likelihood, Student's t") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return exact(drawn.series(), true, Prediction.Reference.T_K_MINUS_2);
    }
  },
  POSTERIOR_HALF("posterior, half-normal 0.5") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return posterior(drawn.series(), List.of(), 0.5);
    }
  },
  POSTERIOR_THREE_QUARTERS("posterior, half-normal 0.75") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return posterior(drawn.series(), List.of(), 0.75);
    }
  },
  POSTERIOR_ONE("posterior, half-normal 1") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return posterior(drawn.series(), List.of(), 1);
    }
  },
  POSTERIOR_SHARED("posterior, half-normal 1, tau shared with 3 methods") {
    @Override
    Map<Target, Interval> intervals(Drawn drawn) {
      return posterior(drawn.series(), drawn.others(), 1);
    }
  };

  static final double LEVEL = 0.95;
  private static final int QUADRATURE_POINTS = 25;

  private final String words;

  Way(String words) {
    this.words = words;
  }

  /** The limits as shares; without those the way has none of for these series. */
  abstract Map<Target, Interval> intervals(Drawn drawn);

  String words() {
    return words;
  }

  private static Map<Target, Interval> posterior(
      List<ArmCounts> series, List<List<ArmCounts>> others, double scale) {
    CountsPosterior posterior =
        CountsPosterior.of(
            likelihood(series),
            others.stream().map(Way::likelihood).toList(),
            new CentrePrior.UniformShare(),
            new TauPrior.HalfNormal(scale))
            .orElseThrow();
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    found.put(
        Target.AVERAGE, shares(posterior.average(MeanOverStudies::logitOfProportion)));
    found.put(Target.MIDDLE, shares(posterior.centre()));
    found.put(Target.FURTHER, shares(posterior.predictive()));
    return found;
  }

  private static MarginalLikelihood likelihood(List<ArmCounts> series) {
    return MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, series);
  }

  private static Interval shares(Marginal logits) {
    Interval limits = logits.equalTailed(LEVEL);
    return new Interval(share(limits.lower()), share(limits.upper()));
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  private static Map<Target, Interval> exact(
      List<ArmCounts> series, boolean studentT, Prediction.Reference reference) {
    return found(
        new ExactLikelihood(ExactLikelihood.Model.PROPORTION, QUADRATURE_POINTS)
            .pool(series, new LikelihoodLimits(LEVEL, studentT, java.util.Optional.of(reference))),
        Way::share);
  }

  private static Map<Target, Interval> logit(
      List<ArmCounts> series, String scale, String interval, Prediction.Reference reference) {
    Measure<ArmCounts> measure = measure(scale);
    List<StudyEffect> effects = measure.effects(series);
    EffectSample sample =
        EffectSample.of(
            effects.stream().mapToDouble(e -> e.estimate().orElseThrow()).toArray(),
            effects.stream().mapToDouble(e -> e.variance().orElseThrow()).toArray());
    BackTransform back = measure.shown(series);
    return found(
        InverseVariance.pool(
            sample,
            new PoolingSettings(
                TauSquaredEstimators.named("restricted-maximum-likelihood"),
                MeanIntervals.named(interval).orElseThrow(),
                new Prediction(reference, Prediction.Error.SUM_OF_WEIGHTS),
                TauSquaredInterval.Q_PROFILE,
                LEVEL)),
        back::apply);
  }

  /** The middle with its limits, and each limit carried to the average at the same spread. */
  private static Map<Target, Interval> found(Pooled pooled, DoubleUnaryOperator back) {
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    pooled
        .mean()
        .ifPresent(
            mean -> {
              Interval limits = mean.interval();
              double tau = Math.sqrt(pooled.heterogeneity().tauSquared().orElse(0));
              found.put(
                  Target.MIDDLE,
                  new Interval(
                      back.applyAsDouble(limits.lower()), back.applyAsDouble(limits.upper())));
              found.put(
                  Target.AVERAGE,
                  new Interval(
                      MeanOverStudies.proportion(limits.lower(), tau),
                      MeanOverStudies.proportion(limits.upper(), tau)));
            });
    pooled
        .prediction()
        .ifPresent(
            limits ->
                found.put(
                    Target.FURTHER,
                    new Interval(
                        back.applyAsDouble(limits.lower()), back.applyAsDouble(limits.upper()))));
    return found;
  }

  @SuppressWarnings("unchecked")
  private static Measure<ArmCounts> measure(String scale) {
    MeasureOptions options =
        new MeasureOptions(
            scale,
            EmptyCells.USUAL,
            OptionalDouble.empty(),
            List.of(),
            true,
            false,
            false,
            LEVEL,
            MeasureOptions.Pooling.INVERSE_VARIANCE);
    return (Measure<ArmCounts>) Measures.named("proportion", options).orElseThrow();
  }
}
