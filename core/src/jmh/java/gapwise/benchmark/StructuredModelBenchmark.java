package gapwise.benchmark;

import gapwise.synthesis.multilevel.ClusteredRows;
import gapwise.synthesis.multilevel.ThreeLevelFit;
import gapwise.synthesis.multilevel.ThreeLevelModel;
import gapwise.synthesis.network.Network;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
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

/** Models of studies that differ in a moderator, a cluster or their treatments, by studies. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
public class StructuredModelBenchmark {
  private static final String ESTIMATOR = "restricted-maximum-likelihood";

  @Param({"10", "100", "1000", "10000"})
  int studies;

  private EffectSample logits;
  private DesignMatrix design;
  private ClusteredRows clustered;
  private final List<NetworkStudy> network = new ArrayList<>();

  /** One moderator; three rows a cluster; pairs of four treatments. */
  @Setup
  public void draw() {
    logits = InventedSeries.of(studies).logits();
    List<double[]> rows = new ArrayList<>();
    List<String> clusters = new ArrayList<>();
    for (int i = 0; i < studies; i++) {
      rows.add(new double[] {1, i % 12});
      clusters.add("C" + i / 3);
      String first = "T" + i % 3;
      String second = "T" + (i % 3 + 1 + i / 3 % (3 - i % 3));
      network.add(
          new NetworkStudy(
              "S" + i,
              List.of(first, second),
              List.of(logits.effect(i)),
              List.of(List.of(logits.variance(i)))));
    }
    design = DesignMatrix.of(List.of(DesignMatrix.INTERCEPT, "months"), rows);
    clustered = ClusteredRows.of(logits, clusters);
  }

  @Benchmark
  public Regression metaRegression() {
    PoolingSettings pooling =
        new PoolingSettings(
            TauSquaredEstimators.named(ESTIMATOR),
            MeanIntervals.named("hartung-knapp").orElseThrow(),
            new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
            TauSquaredInterval.Q_PROFILE,
            0.95);
    return Regression.of(
        logits, design, new RegressionSettings(pooling, RegressionTest.HARTUNG_KNAPP));
  }

  @Benchmark
  public ThreeLevelFit threeLevel() {
    return ThreeLevelModel.fit(clustered, true);
  }

  @Benchmark
  public Network networkOfFourTreatments() {
    NetworkSettings settings =
        new NetworkSettings(
            TauSquaredEstimators.named(ESTIMATOR),
            NetworkPredictions.Spread.UNKNOWN,
            TauSquaredInterval.Q_PROFILE,
            0.95);
    return ((Network.Fitted.Done) Network.of(network, "T0", settings)).network();
  }
}
