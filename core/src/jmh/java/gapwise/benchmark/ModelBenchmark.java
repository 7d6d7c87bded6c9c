package gapwise.benchmark;

import gapwise.effect.ArmCounts;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.likelihood.BinomialNormal;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodFit;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.likelihood.MeanOverStudies;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.LeaveOneOut;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledValue;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One pooling with everything that a result tells of it, by number of studies. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
public class ModelBenchmark {
  @Param({"10", "100", "1000", "10000"})
  int studies;

  private InventedSeries series;
  private EffectSample logits;

  @Setup
  public void draw() {
    series = InventedSeries.of(studies);
    logits = series.logits();
  }

  private static PoolingSettings settings(String estimator) {
    return new PoolingSettings(
        TauSquaredEstimators.named(estimator),
        MeanIntervals.named("hartung-knapp").orElseThrow(),
        new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        0.95);
  }

  @Benchmark
  public Pooled restrictedLikelihood() {
    return InverseVariance.pool(logits, settings("restricted-maximum-likelihood"));
  }

  @Benchmark
  public Pooled derSimonianLaird() {
    return InverseVariance.pool(logits, settings("dersimonian-laird"));
  }

  @Benchmark
  public Pooled pauleMandel() {
    return InverseVariance.pool(logits, settings("paule-mandel"));
  }

  /** Longer than the others, since its growth is in question. */
  @Benchmark
  @Warmup(iterations = 3, time = 1)
  @Measurement(iterations = 8, time = 1)
  public List<PooledValue> leaveOneOut() {
    return LeaveOneOut.of(logits, settings("restricted-maximum-likelihood"));
  }

  @Benchmark
  public LikelihoodFit exactLikelihood() {
    return BinomialNormal.fit(series.events(), series.totals(), 25);
  }

  @Benchmark
  public double bayesianMean() {
    Priors priors = new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(0.5));
    return ((Proper) Posterior.of(logits, priors)).mean().median();
  }

  @Benchmark
  public double countsPosterior() {
    List<ArmCounts> arms = new ArrayList<>();
    for (int i = 0; i < series.events().length; i++) {
      arms.add(new ArmCounts(series.events()[i], series.totals()[i]));
    }
    CountsPosterior posterior =
        CountsPosterior.of(
            MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, arms),
            new CentrePrior.UniformShare(),
            new TauPrior.HalfNormal(1))
            .orElseThrow();
    return posterior.average(MeanOverStudies::logitOfProportion).equalTailed(0.95).lower()
        + posterior.predictive().equalTailed(0.95).lower();
  }
}
