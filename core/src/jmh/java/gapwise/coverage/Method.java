package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
import gapwise.effect.StudyEffect;
import gapwise.effect.EmptyCells;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.pooling.WeightedMean;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A way of making a 95 % interval for a union rate from series of patients. */
enum Method {
  NORMAL("logit, normal", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return pooled(series, "logit", "restricted-maximum-likelihood", "normal");
    }
  },
  HARTUNG_KNAPP("logit, Hartung-Knapp", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return pooled(series, "logit", "restricted-maximum-likelihood", "hartung-knapp");
    }
  },
  NEVER_NARROWER("logit, Hartung-Knapp never narrower", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return pooled(
          series, "logit", "restricted-maximum-likelihood", "hartung-knapp-never-narrower");
    }
  },
  PROFILE("logit, profile likelihood", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return pooled(series, "logit", "maximum-likelihood", "profile-likelihood");
    }
  },
  DERSIMONIAN_LAIRD("logit, DerSimonian-Laird, normal", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return pooled(series, "logit", "dersimonian-laird", "normal");
    }
  },
  DOUBLE_ARCSINE("double arcsine, Hartung-Knapp", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return pooled(series, "double-arcsine", "restricted-maximum-likelihood", "hartung-knapp");
    }
  },
  EXACT("exact likelihood", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return exact(series, false).mean().map(mean -> shares(mean.interval(), series));
    }
  },
  EXACT_T("exact likelihood, t on k - 1", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return exact(series, true).mean().map(mean -> shares(mean.interval(), series));
    }
  },
  BAYESIAN("Bayesian, logit, half-normal 0.5", false) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      Priors priors = new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(0.5));
      return Posterior.of(sample(measure("logit"), series), priors) instanceof Proper proper
          ? Optional.of(shown(proper.mean().equalTailed(LEVEL), measure("logit").shown(series)))
          : Optional.empty();
    }
  },
  EXACT_PREDICTION("exact likelihood, prediction interval, t on k - 2", true) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return exact(series, true).prediction().map(limits -> shares(limits, series));
    }
  },
  PREDICTION("logit, prediction interval, t on k - 2", true) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return predicted(series, Prediction.Reference.T_K_MINUS_2);
    }
  },
  PREDICTION_NORMAL("logit, prediction interval, normal", true) {
    @Override
    Optional<Interval> interval(List<ArmCounts> series) {
      return predicted(series, Prediction.Reference.NORMAL);
    }
  };

  static final double LEVEL = 0.95;
  private static final int QUADRATURE_POINTS = 25;

  private final String words;
  private final boolean predicts;

  Method(String words, boolean predicts) {
    this.words = words;
    this.predicts = predicts;
  }

  /** The limits as shares; empty if the method has none for these series. */
  abstract Optional<Interval> interval(List<ArmCounts> series);

  String words() {
    return words;
  }

  /** Whether it is to hold the rate of one more series instead of the median rate. */
  boolean predicts() {
    return predicts;
  }

  private static Optional<Interval> pooled(
      List<ArmCounts> series, String scale, String estimator, String interval) {
    Measure<ArmCounts> measure = measure(scale);
    EffectSample sample = sample(measure, series);
    TauSquared tauSquared =
        TauSquaredEstimators.named(estimator)
            .orElseThrow()
            .estimate(sample, GroupMeans.one(sample));
    if (!(tauSquared instanceof TauSquared.Estimate estimate)) {
      return Optional.empty();
    }
    WeightedMean mean = WeightedMean.of(sample, estimate.value());
    Interval limits = MeanIntervals.named(interval).orElseThrow().around(mean, LEVEL).interval();
    return Optional.of(shown(limits, measure.shown(series)));
  }

  private static Pooled exact(List<ArmCounts> series, boolean studentT) {
    return new ExactLikelihood(ExactLikelihood.Model.PROPORTION, QUADRATURE_POINTS)
        .pool(
            series,
            new LikelihoodLimits(
                LEVEL, studentT, Optional.of(Prediction.Reference.T_K_MINUS_2)));
  }

  private static Interval shares(Interval limits, List<ArmCounts> series) {
    return shown(limits, measure("logit").shown(series));
  }

  private static Optional<Interval> predicted(
      List<ArmCounts> series, Prediction.Reference reference) {
    Measure<ArmCounts> measure = measure("logit");
    return InverseVariance.pool(sample(measure, series), settings(reference))
        .prediction()
        .map(interval -> shown(interval, measure.shown(series)));
  }

  private static PoolingSettings settings(Prediction.Reference reference) {
    return new PoolingSettings(
        TauSquaredEstimators.named("restricted-maximum-likelihood"),
        MeanIntervals.normal(),
        new Prediction(reference, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        LEVEL);
  }

  private static Interval shown(Interval interval, BackTransform back) {
    return new Interval(back.apply(interval.lower()), back.apply(interval.upper()));
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

  private static EffectSample sample(Measure<ArmCounts> measure, List<ArmCounts> series) {
    List<StudyEffect> effects = measure.effects(series);
    return EffectSample.of(
        effects.stream().mapToDouble(e -> e.estimate().orElseThrow()).toArray(),
        effects.stream().mapToDouble(e -> e.variance().orElseThrow()).toArray());
  }
}
